/** Skulls that are on the page or on their way. */
const asked = new Set<string>();

/**
 * Brings the skull of an animal to the page, where plates call it by its id. The page opens with the outline of one; every
 * skull in full ink is a file of its own. A skull that cannot be had is left out: its value and its mark stand without it.
 */
export async function bringSkull(taxon: string, address: string, shelf: Element): Promise<void> {
  const id = `skull-${taxon}`;
  if (asked.has(id)) return;
  asked.add(id);
  try {
    const response = await fetch(`${address}${taxon}.svg`);
    if (!response.ok) return;
    const parsed = new DOMParser().parseFromString(await response.text(), 'image/svg+xml');
    const group = parsed.getElementById(id);
    if (!group) return;
    document.getElementById(id)?.remove();
    shelf.append(document.importNode(group, true));
  } catch {
    asked.delete(id);
  }
}
