/** Languages that are written from right to left, of those in use on the web. */
const rightToLeft = new Set(['ar', 'arc', 'ckb', 'dv', 'fa', 'he', 'ps', 'sd', 'ug', 'ur', 'yi']);

/** The direction in which a language is written, by its first subtag. */
export function directionOf(language: string): 'ltr' | 'rtl' {
  return rightToLeft.has(language.split('-')[0]!) ? 'rtl' : 'ltr';
}

/**
 * Digits and signs that read from left to right in every language, such as `14 ± 2` and `43.0–40.4`. Between words that run
 * the other way they are held together by isolating marks of Unicode (Standard Annex 9), else their parts would change places.
 */
export function figures(text: string, language: string): string {
  return text === '' || directionOf(language) === 'ltr' ? text : `\u2066${text}\u2069`;
}
