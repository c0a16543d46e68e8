/** The parameter of the address that names the hidden animals. */
const parameter = 'without';

/** Hidden animals that an address names, in the page's own order; ids that the page does not know are passed over. */
export function hiddenIn(search: string, known: readonly string[]): string[] {
  const named = new Set((new URLSearchParams(search).get(parameter) ?? '').split(','));
  return known.filter((taxon) => named.has(taxon));
}

/** Whether an address names any animal to hide, known to the page or not. */
export function namesHidden(search: string): boolean {
  return (new URLSearchParams(search).get(parameter) ?? '') !== '';
}

/** The query of an address with these animals hidden, every other parameter kept; '' for nothing. */
export function searchWith(search: string, hidden: readonly string[]): string {
  const query = new URLSearchParams(search);
  query.delete(parameter);
  const others = query.toString();
  const own = hidden.length > 0 ? `${parameter}=${hidden.map(encodeURIComponent).join(',')}` : '';
  const parts = [others, own].filter(Boolean);
  return parts.length > 0 ? `?${parts.join('&')}` : '';
}
