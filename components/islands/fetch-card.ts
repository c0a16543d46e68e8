/** The card of an id from the page at an address, ready to stand on this one; null where it cannot be had. */
export async function fetchCard(address: string, id: string): Promise<HTMLElement | null> {
  try {
    const response = await fetch(address);
    if (!response.ok) return null;
    const page = new DOMParser().parseFromString(await response.text(), 'text/html');
    const card = page.getElementById(id);
    return card && document.importNode(card, true);
  } catch {
    return null;
  }
}
