import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { cardWords, textsOf } from '../../../components/pages/og/_picture/card-words.ts';
import type { Pens } from '../../../components/pages/og/_picture/compose-card.ts';
import type { Pen } from '../../../components/figures/letters.ts';
import { pictureStyle } from '../../../components/pages/og/_picture/paper-style.ts';
import { cardPicture, cardSvg, pensFor, raster } from '../../../components/pages/og/_picture/raster.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';
import { readFigureStyle, readTokens } from '../fixtures/figure-style.ts';

const [figure, tokens] = await Promise.all([readFigureStyle(), readTokens()]);
const style = pictureStyle(figure, tokens);
const lineage = inventedLineage(risingTips);
/** A private-use letter, which no face has. */
const lacking = '\uE000';

interface Region {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** The same pens, setting the face's missing letter in the place of every other. */
function withoutLetters(pens: Pens): Pens {
  const boxes = (pen: Pen): Pen => ({
    ...pen,
    outline: (text, x, y, size) => pen.outline(lacking.repeat([...text].length), x, y, size),
  });
  return { serif: boxes(pens.serif), sans: boxes(pens.sans), strong: boxes(pens.strong) };
}

/** Share of pixels of a region of the picture that differ by more than a shade. */
async function difference(a: Buffer, b: Buffer, region: Region): Promise<number> {
  const [left, right] = await Promise.all(
    [a, b].map((png) => sharp(png).extract(region).greyscale().raw().toBuffer()),
  );
  const differing = left!.filter((value, at) => Math.abs(value - right![at]!) > 40).length;
  return differing / left!.length;
}

const headline = { left: 60, top: 110, width: 480, height: 200 };
const sheet = { left: 600, top: 60, width: 550, height: 480 };

describe('the picture of a lineage', async () => {
  const picture = await cardPicture(lineage, 'en', style);
  const pens = await pensFor([...textsOf(cardWords(lineage, 'en')), lacking]);

  test('is a PNG of 1200 by 630', async () => {
    const { format, width, height } = await sharp(picture).metadata();
    expect({ format, width, height }).toEqual({ format: 'png', width: 1200, height: 630 });
  });

  test('has the same bytes each time', async () => {
    expect((await cardPicture(lineage, 'en', style)).equals(picture)).toBe(true);
  });

  test('shows letters where boxes or blanks would differ', async () => {
    const boxed = await raster(cardSvg(lineage, 'en', withoutLetters(pens), style));
    expect(await difference(picture, boxed, headline)).toBeGreaterThan(0.03);
  });

  test('leaves all but the letters alone when letters are taken away', async () => {
    const boxed = await raster(cardSvg(lineage, 'en', withoutLetters(pens), style));
    expect(await difference(picture, boxed, { ...sheet, top: 90, height: 430 })).toBeLessThan(0.001);
  });

  test('holds no text element and no variable', () => {
    const svg = cardSvg(lineage, 'en', pens, style);
    expect(svg).not.toMatch(/<text|var\(|light-dark|font-family:\s*var/);
  });

  test('says that it is invented only when it is', () => {
    expect(cardWords(lineage, 'en').invented).toBe('Invented for teaching');
    const real = { ...lineage, about: { ...lineage.about, invented: false } };
    expect(cardWords(real, 'en').invented).toBeUndefined();
  });

  test('counts each status that there is', () => {
    expect(cardWords(lineage, 'en').counts).toEqual([
      { status: 'measured', text: '10 measured on bone' },
      { status: 'bounded', text: '1 limited by a broken bone' },
      { status: 'inferred', text: '1 worked out from relatives' },
    ]);
  });

  test('shows the lineage itself: another lineage has another figure', async () => {
    const falling = inventedLineage(
      risingTips.map((tip) => (tip.value === undefined ? tip : { ...tip, value: 120 - tip.value })),
    );
    expect(await difference(picture, await cardPicture(falling, 'en', style), sheet)).toBeGreaterThan(0.01);
  });

  test('leaves out a title in letters that no face has, and keeps the figure', async () => {
    const far = { ...lineage, about: { ...lineage.about, title: { en: '鼻の位置' } } };
    const other = await cardPicture(far, 'en', style);
    expect(await difference(picture, other, sheet)).toBeLessThan(0.001);
    const row = { left: 60, top: 100, width: 480, height: 40 };
    const shades = await sharp(other).extract(row).greyscale().raw().toBuffer();
    expect(new Set(shades).size).toBe(1);
  });

  test('is whole for a lineage without a trait', async () => {
    const bare = await cardPicture({ ...lineage, traits: [] }, 'en', style);
    expect((await sharp(bare).metadata()).width).toBe(1200);
  });
});
