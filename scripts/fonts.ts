/*
 * Cuts the three faces of the pages from the type families in node_modules, and fits to them the faces of the visitor's system
 * that stand in where one does not come in time: `node scripts/fonts.ts`, on a system with the Liberation faces.
 * The result is committed in components/styles/fonts; run this again only when a face or its letters change.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { format, resolveConfig } from 'prettier';
import subsetFont from 'subset-font';
import { parse } from 'yaml';
import { standInRule, type StandIn } from './fonts/stand-ins.ts';

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

const family = (file: string) => new URL(`../node_modules/@fontsource-variable/${file}`, import.meta.url);
const newsreader = family('newsreader/files/newsreader-latin-standard-normal.woff2');
const newsreaderItalic = family('newsreader/files/newsreader-latin-standard-italic.woff2');
const commissioner = family('commissioner/files/commissioner-latin-flar-normal.woff2');

const faces: { source: URL; name: string; axes: Axes }[] = [
  {
    source: newsreader,
    name: 'newsreader.woff2',
    axes: { opsz: { min: 12, max: 60 }, wght: { min: 400, max: 600 } },
  },
  { source: newsreaderItalic, name: 'newsreader-italic.woff2', axes: { opsz: 24, wght: 430 } },
  { source: commissioner, name: 'commissioner.woff2', axes: { FLAR: 40, wght: { min: 400, max: 700 } } },
];

for (const { source, name, axes } of faces) {
  const whole = await readFile(source);
  const cut = await subsetFont(whole, String.fromCodePoint(...letters), {
    targetFormat: 'woff2',
    variationAxes: axes,
  });
  await writeFile(new URL(`../components/styles/fonts/${name}`, import.meta.url), cut);
  console.log(`${name}: ${whole.length} to ${cut.length} bytes`);
}

/** The Liberation faces have the widths of Times New Roman and Arial, as their makers say; so have Tinos and Arimo. */
const standIns: StandIn[] = [
  {
    family: 'Reading stand-in',
    style: 'normal',
    weights: '400 520',
    ours: { source: newsreader, axes: { opsz: 19, wght: 400 } },
    measured: 'Liberation Serif:regular',
    local: ['Times New Roman', 'TimesNewRomanPSMT', 'Liberation Serif', 'LiberationSerif', 'Tinos'],
  },
  {
    family: 'Reading stand-in',
    style: 'normal',
    weights: '521 700',
    ours: { source: newsreader, axes: { opsz: 19, wght: 600 } },
    measured: 'Liberation Serif:bold',
    local: [
      'Times New Roman Bold',
      'TimesNewRomanPS-BoldMT',
      'Liberation Serif Bold',
      'LiberationSerif-Bold',
      'Tinos Bold',
    ],
  },
  {
    family: 'Name stand-in',
    style: 'italic',
    weights: '400 700',
    ours: { source: newsreaderItalic, axes: { opsz: 24, wght: 430 } },
    measured: 'Liberation Serif:italic',
    local: [
      'Times New Roman Italic',
      'TimesNewRomanPS-ItalicMT',
      'Liberation Serif Italic',
      'LiberationSerif-Italic',
      'Tinos Italic',
    ],
  },
  {
    family: 'Label stand-in',
    style: 'normal',
    weights: '400 549',
    ours: { source: commissioner, axes: { FLAR: 40, wght: 460 } },
    measured: 'Liberation Sans:regular',
    local: ['Arial', 'ArialMT', 'Liberation Sans', 'LiberationSans', 'Arimo'],
  },
  {
    family: 'Label stand-in',
    style: 'normal',
    weights: '550 700',
    ours: { source: commissioner, axes: { FLAR: 40, wght: 620 } },
    measured: 'Liberation Sans:bold',
    local: ['Arial Bold', 'Arial-BoldMT', 'Liberation Sans Bold', 'LiberationSans-Bold', 'Arimo Bold'],
  },
];

const content = new URL('../content/reed-trunks/', import.meta.url);
const prose = (await readFile(new URL('story.en.mdx', content), 'utf8')).replace(/<[^>]*>|[\n#]+/g, ' ');
const taxa = parse(await readFile(new URL('taxa.yaml', content), 'utf8')) as { scientificName: string }[];
const names = taxa.map(({ scientificName }) => scientificName).join(' ');

const rules = await Promise.all(
  standIns.map((standIn) => standInRule(standIn, standIn.style === 'italic' ? names : prose)),
);
const sheet = new URL('../components/styles/fonts/stand-ins.css', import.meta.url);
const about =
  '/* Written by scripts/fonts.ts: faces of the system, scaled to run as long and stand as high as ours. */';
const style = await resolveConfig(sheet);
await writeFile(sheet, await format([about, ...rules].join('\n'), { ...style, parser: 'css' }));

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, offset) => from + offset);
}
