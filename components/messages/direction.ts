/** Languages that are written from right to left, of those in use on the web. */
const rightToLeft = new Set(['ar', 'arc', 'ckb', 'dv', 'fa', 'he', 'ps', 'sd', 'ug', 'ur', 'yi']);

/** The direction in which a language is written, by its first subtag. */
export function directionOf(language: string): 'ltr' | 'rtl' {
  return rightToLeft.has(language.split('-')[0]!) ? 'rtl' : 'ltr';
}

const [leftToRight, firstStrong, end] = ['\u2066', '\u2068', '\u2069'];

/**
 * Digits and signs that read from left to right in every language, such as `14 ± 2` and `43.0–40.4`. Between words that run
 * the other way they are held together by isolating marks of Unicode (Standard Annex 9), else their parts would change places.
 */
export function figures(text: string, language: string): string {
  return text === '' || directionOf(language) === 'ltr' ? text : leftToRight + text + end;
}

/**
 * A name, a citation, an address or a quantity that keeps the order of its own first letter among words that may run the other way.
 * A plain number, and words without a letter or digit that runs from left to right, need no marks.
 */
export function isolated(text: string, language: string): string {
  if (directionOf(language) === 'ltr' || !/[\p{Script=Latin}\p{Script=Greek}\d]/u.test(text)) return text;
  return /^\d[\d.]*$/.test(text) || isOneIsolate(text) ? text : ofFirstStrong(text);
}

/** A text held together in the direction of its first letter; from left to right where it has none. */
export function ofFirstStrong(text: string): string {
  return firstStrong + text + end;
}

/** Whether the isolating mark that a text begins with ends at its end. */
function isOneIsolate(text: string): boolean {
  return /^[\u2066-\u2068][^\u2066-\u2069]*\u2069$/.test(text);
}
