import fc from 'fast-check';

/** One act of damage to a text: where, as a share of its length, and what. */
export interface Damage {
  at: number;
  act:
    'delete' | 'double' | 'insert' | 'swap-lines' | 'drop-line' | 'cut' | 'replace-number' | 'replace-word';
  length: number;
  junk: string;
}

const junk = fc.constantFrom(
  '"',
  "'",
  '[',
  '{',
  '}',
  ']',
  ':',
  '- ',
  '#',
  ',',
  '\n',
  '\t',
  ' ',
  '&a ',
  '*a',
  '!!js ',
  '%',
  '@',
  '\u0000',
  '\uFEFF',
  '\u202e',
  '٣',
  '½',
  '<',
  '/>',
  '{1}',
  '<Value',
  'NaN',
  '.inf',
  '-1',
  '0',
  '1e999',
  '=A1',
  '1,5',
  'null',
  '~',
  'true',
  'NO',
  '__proto__',
  'constructor',
  '../../x',
  '(',
  ')',
  ';',
  '@article{',
  '\\',
  'é',
  '😀',
);

/** Any damage; the same seed gives the same. */
export const damage: fc.Arbitrary<Damage> = fc.record({
  at: fc.integer({ min: 0, max: 99_999 }).map((place) => place / 100_000),
  act: fc.constantFrom(
    'delete',
    'double',
    'insert',
    'swap-lines',
    'drop-line',
    'cut',
    'replace-number',
    'replace-word',
  ),
  length: fc.integer({ min: 1, max: 60 }),
  junk,
});

/** The text after the damage; a text without numbers or words stays as it is where one was to be replaced. */
export function mutate(text: string, { at, act, length, junk: inserted }: Damage): string {
  const place = Math.floor(at * text.length);
  if (act === 'delete') return text.slice(0, place) + text.slice(place + length);
  if (act === 'double') return text.slice(0, place + length) + text.slice(place);
  if (act === 'insert') return text.slice(0, place) + inserted + text.slice(place);
  if (act === 'cut') return text.slice(0, place);
  if (act === 'replace-number') return replaceAt(text, /-?\d+(\.\d+)?/g, at, inserted);
  if (act === 'replace-word') return replaceAt(text, /[A-Za-z][\w-]*/g, at, inserted);
  const lines = text.split('\n');
  const line = Math.floor(at * lines.length);
  if (act === 'drop-line') lines.splice(line, 1);
  else lines.splice(line, 2, ...lines.slice(line, line + 2).reverse());
  return lines.join('\n');
}

function replaceAt(text: string, pattern: RegExp, at: number, by: string): string {
  const found = [...text.matchAll(pattern)];
  const match = found[Math.floor(at * found.length)];
  return match ? text.slice(0, match.index) + by + text.slice(match.index + match[0].length) : text;
}
