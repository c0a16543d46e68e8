/** Skulls that are on the page or on their way. */
const asked = new Set<string>();

/**
 * Brings the skull of an animal to the page, where plates call it by its id. The page opens with one skull; the others are
 * files of their own. A skull that cannot be had is left out: its value and its mark stand without it.
 */
export async function bringSkull(taxon: string, address: string, shelf: Element): Promise<void> {
  const id = `skull-${taxon}`;
  if (asked.has(id) || document.getElementById(id)) return;
  asked.add(id);
  try {
    const response = await fetch(`${address}${taxon}.svg`);
    if (!response.ok) return;
    const parsed = new DOMParser().parseFromString(await response.text(), 'image/svg+xml');
    const group = parsed.getElementById(id);
    if (group) shelf.append(document.importNode(group, true));
  } catch {
    asked.delete(id);
  }
}
