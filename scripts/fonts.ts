/*
 * Cuts the three faces of the pages from the type families in node_modules: `node scripts/fonts.ts`.
 * The result is committed in components/styles/fonts; run this again only when a face or its letters change.
 */
import { readFile, writeFile } from 'node:fs/promises';
import subsetFont from 'subset-font';

/** Basic Latin, Latin-1, and the signs that pages print: dashes, quotes, minus, at-least, thin and narrow spaces, arrows. */
const letters = [
  ...range(0x20, 0x7e),
  ...range(0xa0, 0xff),
  0x131,
  0x152,
  0x153,
  0x2bc,
  0x2009,
  0x202f,
  0x2013,
  0x2014,
  0x2018,
  0x2019,
  0x201c,
  0x201d,
  0x2022,
  0x2026,
  0x2190,
  0x2191,
  0x2192,
  0x2193,
  0x2212,
  0x2248,
  0x2264,
  0x2265,
  0x20ac,
];

type Axes = Record<string, number | { min: number; max: number }>;

const faces: { source: string; name: string; axes: Axes }[] = [
  {
    source: 'newsreader/files/newsreader-latin-standard-normal.woff2',
    name: 'newsreader.woff2',
    axes: { opsz: { min: 12, max: 60 }, wght: { min: 400, max: 600 } },
  },
  {
    source: 'newsreader/files/newsreader-latin-standard-italic.woff2',
    name: 'newsreader-italic.woff2',
    axes: { opsz: 24, wght: 430 },
  },
  {
    source: 'commissioner/files/commissioner-latin-flar-normal.woff2',
    name: 'commissioner.woff2',
    axes: { FLAR: 40, wght: { min: 400, max: 700 } },
  },
];

for (const { source, name, axes } of faces) {
  const whole = await readFile(new URL(`../node_modules/@fontsource-variable/${source}`, import.meta.url));
  const cut = await subsetFont(whole, String.fromCodePoint(...letters), {
    targetFormat: 'woff2',
    variationAxes: axes,
  });
  await writeFile(new URL(`../components/styles/fonts/${name}`, import.meta.url), cut);
  console.log(`${name}: ${whole.length} to ${cut.length} bytes`);
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, offset) => from + offset);
}
