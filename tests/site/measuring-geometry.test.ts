import sharp from 'sharp';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import {
  atBench,
  give,
  nameOwn,
  openPlain,
  press,
  ready,
  seenAt,
  setScale,
  tap,
  textOf,
  type Place,
} from './measuring-hands.ts';

/** A drawing of known geometry: a bar of 1000 px, a square with sides of 400 px, a circle 300 px across. */
const known = Buffer.from(
  `<svg xmlns="http://www.w3.org/2000/svg" width="1600" height="1000" shape-rendering="crispEdges"><rect width="1600" height="1000"/>
  <g fill="#fff"><rect x="300" y="850" width="1000" height="20"/><rect x="250" y="150" width="400" height="400"/><circle cx="1150" cy="350" r="150"/></g></svg>`,
);
const edges: Record<string, { at: Place; side: 'left' | 'right'; end?: 'top' | 'bottom' }> = {
  'bar left': { at: [300, 860], side: 'left' },
  'bar right': { at: [1300, 860], side: 'right' },
  'square a': { at: [250, 150], side: 'left', end: 'top' },
  'square b': { at: [650, 150], side: 'right', end: 'top' },
  'square c': { at: [650, 550], side: 'right', end: 'bottom' },
  'circle left': { at: [1000, 350], side: 'left' },
  'circle right': { at: [1300, 350], side: 'right' },
};

/** Enlarges about a place, finds the edge in what the screen shows, and clicks where it is seen. */
async function clickEdge(view: Page, { at, side, end }: (typeof edges)[string]): Promise<void> {
  await press(view, 'whole');
  const stage = view.locator('[data-stage]');
  await stage.scrollIntoViewIfNeeded();
  const box = (await stage.boundingBox())!;
  const seen = await seenAt(view, at);
  await view.mouse.move(box.x + seen.x, box.y + seen.y);
  await view.keyboard.down('Control');
  for (let turn = 0; turn < 4; turn++) await view.mouse.wheel(0, -100);
  await view.keyboard.up('Control');
  const shot = await stage.screenshot();
  const { data, info } = await sharp(shot).greyscale().raw().toBuffer({ resolveWithObject: true });
  const white: Place[] = [];
  const reach = 100;
  // the stage's rim is not the picture
  const rim = 4;
  for (
    let y = Math.max(rim, Math.round(seen.y) - reach);
    y < Math.min(info.height - rim, seen.y + reach);
    y++
  )
    for (
      let x = Math.max(rim, Math.round(seen.x) - reach);
      x < Math.min(info.width - rim, seen.x + reach);
      x++
    )
      if (data[y * info.width + x]! > 180) white.push([x, y]);
  const xs = white.map(([x]) => x);
  const edgeX = side === 'left' ? Math.min(...xs) : Math.max(...xs);
  const ys = white.filter(([x]) => x === edgeX).map(([, y]) => y);
  const [top, bottom] = [Math.min(...ys), Math.max(...ys) + 1];
  const y = end === 'top' ? top : end === 'bottom' ? bottom : (top + bottom) / 2;
  await view.mouse.click(box.x + (side === 'left' ? edgeX : edgeX + 1), box.y + y);
}

describe('a picture of known geometry (drawn here; its lengths are school geometry, no source)', () => {
  test('is measured end to end within half a px', async () => {
    const faults = await atBench(async (view) => {
      await give(view, 'known.png', await sharp(known).png().toBuffer());
      await ready(view);
      await nameOwn(view, Object.keys(edges).slice(2));
      for (const [from, to] of [
        ['square-a', 'square-b'],
        ['square-a', 'square-c'],
        ['circle-left', 'circle-right'],
      ]) {
        await view.selectOption('[data-own-from]', from!);
        await view.selectOption('[data-own-to]', to!);
        await press(view, 'add-length');
      }
      await setScale(view, '100');
      for (const edge of Object.values(edges)) await clickEdge(view, edge);
      const [header, row] = (await textOf(view, 'sheet'))!
        .trim()
        .split('\n')
        .map((line) => line.split(','));
      const placed = new Map(header!.map((name, index) => [name, Number(row![index])]));
      for (const [name, { at }] of Object.entries(edges).slice(2)) {
        const id = name.replace(' ', '-');
        expect(Math.abs(placed.get(`${id}.x`)! - at[0]), name).toBeLessThanOrEqual(0.5);
        expect(Math.abs(placed.get(`${id}.y`)! - at[1]), name).toBeLessThanOrEqual(0.5);
      }
      const read = async (name: string) =>
        Number.parseFloat(await view.locator(`[data-reading="${name}"] td`).first().innerText());
      // half a px at each end is 0.1 mm at 10 px a mm
      expect(Math.abs((await read('square-a square-b')) - 40)).toBeLessThanOrEqual(0.1);
      expect(Math.abs((await read('square-a square-c')) - 40 * Math.SQRT2)).toBeLessThanOrEqual(0.1);
      expect(Math.abs((await read('circle-left circle-right')) - 30)).toBeLessThanOrEqual(0.1);
    });
    expect(faults).toEqual([]);
  });

  test('keeps its points where they are when it is shown level along a line', async () => {
    await atBench(async (view) => {
      await give(view, 'known.png', await sharp(known).png().toBuffer());
      await ready(view);
      await nameOwn(view, ['corner']);
      await setScale(view, '100');
      await tap(view, [300, 860]);
      await tap(view, [1300, 860]);
      await view.selectOption('[data-level]', 'own-line');
      await tap(view, [250, 150]);
      await tap(view, [650, 550]);
      const [from, to] = [await seenAt(view, [250, 150]), await seenAt(view, [650, 550])];
      expect(Math.abs(to.y - from.y)).toBeLessThan(1);
      expect(to.x).toBeGreaterThan(from.x);
      await press(view, 'whole');
      await tap(view, [650, 150]);
      const [, x, y] = (await textOf(view, 'sheet'))!.split('\n')[1]!.split(',').slice(1);
      expect(Math.abs(Number(x) - 650)).toBeLessThanOrEqual(2);
      expect(Math.abs(Number(y) - 150)).toBeLessThanOrEqual(2);
    });
  });

  test('is shown level along an axis of the scheme once its landmarks are placed', async () => {
    await atBench(async (view) => {
      await openPlain(view);
      await view.selectOption('[data-scheme]', 'reed-trunks left-lateral');
      const ends: Record<string, Place> = { 'p2-alveolus': [200, 400], 'm3-alveolus': [500, 300] };
      await view.selectOption('[data-level]', 'skull-axis');
      for (const [landmark, place] of Object.entries(ends)) {
        await view.click(`[data-slot="landmark ${landmark}"]`);
        await tap(view, place);
      }
      const [from, to] = [await seenAt(view, [200, 400]), await seenAt(view, [500, 300])];
      expect(Math.abs(to.y - from.y)).toBeLessThan(2);
      await view.selectOption('[data-level]', '');
      const back = [await seenAt(view, [200, 400]), await seenAt(view, [500, 300])] as const;
      expect(back[1].y - back[0].y).toBeCloseTo((-(back[1].x - back[0].x) * 100) / 300, 6);
    });
  });
});
