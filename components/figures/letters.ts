import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { Blob, Buffer as LetterBuffer, Face, Font, shape } from 'harfbuzzjs';
import subsetFont from 'subset-font';
import { coordinate } from './scene/scene.ts';

/** A face in one weight: the files that share its letters between them, and where its axes stand. */
export interface Hand {
  files: readonly string[];
  axes: Readonly<Record<string, number>>;
}

const newsreader = (part: string) =>
  `@fontsource-variable/newsreader/files/newsreader-${part}-standard-normal.woff2`;
const commissioner = (part: string) =>
  `@fontsource-variable/commissioner/files/commissioner-${part}-flar-normal.woff2`;
const commissionerFiles = ['latin', 'latin-ext', 'greek', 'cyrillic'].map(commissioner);

/** For titles. */
export const serif: Hand = { files: ['latin', 'latin-ext'].map(newsreader), axes: { opsz: 60, wght: 440 } };
/** For everything else. */
export const sans: Hand = { files: commissionerFiles, axes: { FLAR: 40, wght: 460 } };
export const sansStrong: Hand = { files: commissionerFiles, axes: { FLAR: 40, wght: 620 } };

/** Sets text in one hand. Sizes and places are in pixels. */
export interface Pen {
  /** Whether the hand has every letter of a text. */
  covers(text: string): boolean;
  width(text: string, size: number): number;
  /** Path data of a text with its baseline at a height. A letter that the hand lacks becomes the face's own blank or box. */
  outline(text: string, x: number, y: number, size: number): string;
}

interface CutFont {
  font: Font;
  unitsPerEm: number;
  letters: ReadonlySet<number>;
}

const resolve = createRequire(import.meta.url).resolve;

/** A pen for the letters of these texts, and no others. */
export async function penFor(hand: Hand, texts: readonly string[]): Promise<Pen> {
  const letters = [...new Set(texts.join(''))].join('') || ' ';
  const fonts = await Promise.all(hand.files.map((file) => cut(file, letters, hand.axes)));
  const owner = (letter: string) => fonts.find((font) => font.letters.has(letter.codePointAt(0)!));
  return {
    covers: (text) => [...text].every((letter) => owner(letter) !== undefined),
    width: (text, size) => runsOf(text, owner, fonts[0]!).reduce((sum, run) => sum + widthOf(run, size), 0),
    outline: (text, x, y, size) => {
      let at = x;
      return runsOf(text, owner, fonts[0]!)
        .map((run) => {
          const d = outlineOf(run, at, y, size);
          at += widthOf(run, size);
          return d;
        })
        .join('');
    },
  };
}

async function cut(file: string, letters: string, variationAxes: Hand['axes']): Promise<CutFont> {
  const whole = await readFile(resolve(file));
  const face = new Face(new Blob(await subsetFont(whole, letters, { targetFormat: 'sfnt', variationAxes })));
  return { font: new Font(face), unitsPerEm: face.upem, letters: new Set(face.collectUnicodes()) };
}

interface Run {
  text: string;
  font: CutFont;
}

/** Runs of letters that one font owns; a letter that none owns stays with the first. */
function runsOf(text: string, owner: (letter: string) => CutFont | undefined, first: CutFont): Run[] {
  const runs: Run[] = [];
  for (const letter of text) {
    const font = owner(letter) ?? first;
    const last = runs.at(-1);
    if (last?.font === font) last.text += letter;
    else runs.push({ text: letter, font });
  }
  return runs;
}

interface PlacedGlyph {
  id: number;
  x: number;
  y: number;
}

/** Glyphs of a run with their places, in units of the font, kerned and joined as the font says. */
function shaped({ text, font }: Run): { glyphs: PlacedGlyph[]; advance: number } {
  const buffer = new LetterBuffer();
  buffer.addText(text);
  buffer.guessSegmentProperties();
  shape(font.font, buffer);
  let advance = 0;
  const glyphs = buffer.getGlyphInfosAndPositions().map((glyph) => {
    const placed = { id: glyph.codepoint, x: advance + (glyph.xOffset ?? 0), y: glyph.yOffset ?? 0 };
    advance += glyph.xAdvance ?? 0;
    return placed;
  });
  return { glyphs, advance };
}

function widthOf(run: Run, size: number): number {
  return (shaped(run).advance * size) / run.font.unitsPerEm;
}

/** Outlines grow upward in a font and downward in a picture, hence the turned sign. */
function outlineOf(run: Run, x: number, y: number, size: number): string {
  const scale = size / run.font.unitsPerEm;
  return shaped(run)
    .glyphs.flatMap((glyph) =>
      run.font.font.glyphToJson(glyph.id).map(({ type, values }) => {
        const placed = values.map((value, index) =>
          index % 2 === 0 ? x + (value + glyph.x) * scale : y - (value + glyph.y) * scale,
        );
        return type + placed.map(coordinate).join(' ');
      }),
    )
    .join('');
}
