import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { Blob, Buffer as LetterBuffer, Face, Font, shape } from 'harfbuzzjs';
import subsetFont from 'subset-font';

/** A face of the visitor's system that is read where one of ours is not there in time. */
export interface StandIn {
  /** Name of the family in the style sheets. */
  family: string;
  style: 'normal' | 'italic';
  /** The weights that it stands for, as CSS gives them. */
  weights: string;
  /** Our face in node_modules, and where its axes stand at the commonest size and weight of these. */
  ours: { source: URL; axes: Readonly<Record<string, number>> };
  /** The face of the system that is measured, by the family and style under which a Linux system finds it. */
  measured: string;
  /** Names of faces with the widths of the measured one, first to be had first. */
  local: readonly string[];
}

/**
 * The CSS rule of a stand-in, scaled so that `words` run as long in it as in our face, with the heights of our face: `size-adjust`
 * is the ratio of both lengths, and ascent and descent are ours over it (CSS Fonts 5, size-adjust and ascent-override).
 * Throws where the system has no face of the measured name.
 */
export async function standInRule(standIn: StandIn, words: string): Promise<string> {
  const { family, style, weights, ours, local } = standIn;
  const whole = await readFile(ours.source);
  const own = fontOf(
    await subsetFont(whole, words, { targetFormat: 'sfnt', variationAxes: { ...ours.axes } }),
  );
  const system = fontOf(await readFile(fileOf(standIn.measured)));
  const size = lengthOf(words, own) / lengthOf(words, system);
  const { ascender, descender, lineGap } = own.hExtents();
  const percent = (units: number) => `${hundredths((units / own.face.upem / size) * 100)}%`;
  return `@font-face {
  font-family: '${family}';
  font-style: ${style};
  font-weight: ${weights};
  src: ${local.map((name) => `local('${name}')`).join(', ')};
  size-adjust: ${hundredths(size * 100)}%;
  ascent-override: ${percent(ascender)};
  descent-override: ${percent(-descender)};
  line-gap-override: ${percent(lineGap)};
}
`;
}

const hundredths = (value: number) => Number(value.toFixed(2));

/** Where the system keeps a face. A system that lacks it offers another in its place, which would be measured for it. */
function fileOf(pattern: string): string {
  const found = execFileSync('fc-match', ['--format=%{family}\t%{file}', pattern], { encoding: 'utf8' });
  const [family = '', file = ''] = found.split('\t');
  if (!family.includes(pattern.split(':')[0]!))
    throw new Error(`no face "${pattern}" on this system; found "${family}"`);
  return file;
}

function fontOf(bytes: Uint8Array): Font {
  return new Font(new Face(new Blob(bytes)));
}

/** How far the words run in a face, in ems. */
function lengthOf(words: string, font: Font): number {
  const buffer = new LetterBuffer();
  buffer.addText(words);
  buffer.guessSegmentProperties();
  shape(font, buffer);
  const advance = buffer.getGlyphInfosAndPositions().reduce((sum, { xAdvance = 0 }) => sum + xAdvance, 0);
  return advance / font.face.upem;
}
