import sharp from 'sharp';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { glyph } from '../../components/figures/scene/glyphs.ts';
import { shapeToSvg } from '../../components/figures/scene/svg.ts';
import type { Status } from '../../scripts/compile/contract.ts';
import { useBrowser } from './open-page.ts';
import { visit } from './visit.ts';

useBrowser();
const explainer = `${inject('siteUrl')}reed-trunks/`;
const desktop = { width: 1440, height: 900 };

/** Which pixels a glyph inks, at eight times its size in figures; open shapes are open, as in the style sheet. */
async function inkOf(status: Status): Promise<boolean[]> {
  const strokes: Record<string, string> = {
    disc: 'fill="#000"',
    half: 'fill="#000"',
    wall: 'stroke="#000" stroke-width="2.6"',
    diamond: 'fill="#fff" stroke="#000" stroke-width="1.6"',
    ring: 'fill="#fff" stroke="#000" stroke-width="1.4" stroke-linecap="round" stroke-dasharray="0.1 2.9"',
    query: 'fill="#000"',
  };
  const inner = glyph(status, 0, 0, 1)
    .map(({ role, shape }) => shapeToSvg(shape, role).replace(`class="${role}"`, strokes[role]!))
    .join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="144" height="144" viewBox="-9 -9 18 18">${inner}</svg>`;
  const pixels = await sharp(Buffer.from(svg)).flatten({ background: '#fff' }).greyscale().raw().toBuffer();
  return [...pixels].map((grey) => grey < 128);
}

/** Pixels that two glyphs share, of all that either inks. */
function likeness(a: readonly boolean[], b: readonly boolean[]): number {
  const shared = a.filter((ink, index) => ink && b[index]).length;
  return shared / a.filter((ink, index) => ink || b[index]).length;
}

describe('statuses are told apart by shape alone', () => {
  const statuses: Status[] = ['measured', 'bounded', 'inferred', 'unknown'];
  const pairs = statuses.flatMap((a, index) => statuses.slice(index + 1).map((b) => [a, b] as const));

  test.each(pairs)('%s and %s share less than 0.9 of their ink', async (a, b) => {
    const [first, second] = [await inkOf(a), await inkOf(b)];
    expect(first.filter(Boolean).length).toBeGreaterThan(300);
    expect(likeness(first, second)).toBeLessThan(0.9);
    expect(likeness(first, first)).toBe(1);
  });

  /** Grey by the luminance weights of sRGB; protan, deutan, tritan by Machado, Oliveira and Fernandes (2009), severity 1, from memory. */
  const views = {
    grey: [0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722],
    protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
    deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
    tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
  };

  const roleOf = { measured: 'disc', bounded: 'half', inferred: 'diamond', unknown: 'ring' };

  describe('also as drawn on the page', () => {
    const drawn = new Map<Status, Buffer>();
    beforeAll(() =>
      visit(explainer, { viewport: desktop, deviceScaleFactor: 4 }, async ({ view }) => {
        for (const status of statuses) {
          const cell = `#values .values tr:has(a) .status-cell:has(.${roleOf[status]})`;
          drawn.set(status, await view.locator(`${cell} .status-mark`).first().screenshot());
        }
      }),
    );

    test.each(Object.entries(views))('seen in %s', async (_, matrix) => {
      for (const [a, b] of pairs) {
        const [first, second] = [await inkSeen(drawn.get(a)!, matrix), await inkSeen(drawn.get(b)!, matrix)];
        expect(first.filter(Boolean).length).toBeGreaterThan(50);
        expect(likeness(first, second), `${a} and ${b}`).toBeLessThan(0.9);
      }
    });
  });
});

/** Ink of a picture through a colour matrix: pixels nearer to the darkest than to the lightest. */
async function inkSeen(png: Buffer, matrix: readonly number[]): Promise<boolean[]> {
  const rows = [matrix.slice(0, 3), matrix.slice(3, 6), matrix.slice(6, 9)] as never;
  const pixels = await sharp(png).removeAlpha().resize(64, 64).recomb(rows).greyscale().raw().toBuffer();
  const middle = (Math.min(...pixels) + Math.max(...pixels)) / 2;
  return [...pixels].map((grey) => grey < middle);
}
