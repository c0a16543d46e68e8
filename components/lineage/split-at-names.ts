/** A sentence cut before and after each of the names that it holds; of two names that begin alike the longer is taken. */
export function splitAtNames(
  sentence: string,
  names: readonly string[],
): { text: string; isName: boolean }[] {
  const longestFirst = [...names].filter(Boolean).sort((a, b) => b.length - a.length);
  if (longestFirst.length === 0) return [{ text: sentence, isName: false }];
  const known = new Set(names);
  const pattern = new RegExp(
    `(${longestFirst.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|')})`,
    'u',
  );
  return sentence
    .split(pattern)
    .filter((text) => text !== '')
    .map((text) => ({ text, isName: known.has(text) }));
}
