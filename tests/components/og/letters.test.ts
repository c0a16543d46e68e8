import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { penFor, sans, sansStrong, serif, type Pen } from '../../../components/figures/letters.ts';

const texts = ['The nose that climbed the face', '¿Cuándo se movió la nariz? ± “41–58”'];
/** A private-use letter, which no face has: what is drawn for it is what boxes are made of. */
const lacking = '\uE000';
const hands = [
  { name: 'serif', hand: serif },
  { name: 'sans', hand: sans },
  { name: 'strong', hand: sansStrong },
];

/** Which pixels of a line are inked. */
async function inked(d: string): Promise<boolean[]> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="80"><rect width="900" height="80" fill="#fff"/><path d="${d}"/></svg>`;
  const raw = await sharp(Buffer.from(svg)).greyscale().raw().toBuffer();
  return [...raw].map((value) => value < 128);
}

/** Share of inked pixels of either that both have; 1 for two blanks. */
function likeness(a: readonly boolean[], b: readonly boolean[]): number {
  const both = a.filter((ink, at) => ink && b[at]).length;
  const either = a.filter((ink, at) => ink || b[at]).length;
  return either === 0 ? 1 : both / either;
}

describe.each(hands)('the $name hand', ({ hand }) => {
  let pen: Pen;
  beforeAll(async () => {
    pen = await penFor(hand, [...texts, lacking]);
  });

  test.each(texts)('has every letter of "%s"', (text) => {
    expect(pen.covers(text)).toBe(true);
    for (const letter of new Set(text.replace(/\s/g, '')))
      expect(pen.outline(letter, 0, 0, 40), letter).not.toBe(pen.outline(lacking, 0, 0, 40));
  });

  test.each(texts)('draws "%s" as letters, not as boxes or blanks', async (text) => {
    const letters = await inked(pen.outline(text, 10, 60, 40));
    const boxes = await inked(pen.outline(lacking.repeat(text.length), 10, 60, 40));
    expect(letters.filter(Boolean).length).toBeGreaterThan(2000);
    expect(likeness(letters, boxes)).toBeLessThan(0.3);
  });

  test('a text without its letters is found out by the same measure', async () => {
    const boxes = await inked(pen.outline(lacking.repeat(9), 10, 60, 40));
    expect(likeness(boxes, boxes)).toBe(1);
    expect(pen.covers(lacking)).toBe(false);
  });

  test('draws letters that differ from each other, as boxes do not', () => {
    const letters = [...'nosehatclimbedf'].filter((letter, at, all) => all.indexOf(letter) === at);
    expect(new Set(letters.map((letter) => pen.outline(letter, 0, 0, 40))).size).toBe(letters.length);
  });

  test('gives a longer text more width, and twice the size twice the width', () => {
    expect(pen.width('nose', 20)).toBeGreaterThan(pen.width('no', 20));
    expect(pen.width('nose', 40)).toBeCloseTo(2 * pen.width('nose', 20), 9);
  });

  test('an outline ends about where its width says', () => {
    const xs = [...pen.outline('nose', 0, 0, 100).matchAll(/[A-Z]([-\d.]+)/g)].map((match) =>
      Number(match[1]),
    );
    expect(Math.max(...xs)).toBeLessThanOrEqual(pen.width('nose', 100));
    expect(Math.max(...xs)).toBeGreaterThan(pen.width('nose', 100) * 0.9);
  });
});

test('letters of two files stand in one line', async () => {
  const pen = await penFor(sans, ['Żółw Čelist']);
  expect(pen.covers('Żółw Čelist')).toBe(true);
  expect(pen.width('Żółw', 20)).toBeGreaterThan(pen.width('Żó', 20));
});

test('a hand does not claim a script that it lacks', async () => {
  const pen = await penFor(serif, ['鼻の位置', 'أنف']);
  expect(pen.covers('鼻')).toBe(false);
  expect(pen.covers('أنف')).toBe(false);
});
