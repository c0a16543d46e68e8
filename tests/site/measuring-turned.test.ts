import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import {
  atBench,
  give,
  inHand,
  nameOwn,
  notes,
  openPlain,
  press,
  ready,
  setScale,
  tap,
  textOf,
} from './measuring-hands.ts';

async function turnOver(view: Page): Promise<void> {
  await press(view, 'turn-over');
  await view.waitForFunction(() =>
    document.querySelector('[data-picture-notes]')!.textContent!.includes('turned over'),
  );
}

describe('a picture at the bench', () => {
  test('of the other side is turned over with its points, in what is seen and what is saved', async () => {
    await atBench(async (view) => {
      // dark on the left, light on the right
      const halves = sharp({
        create: { width: 400, height: 300, channels: 3, background: '#fff' },
      }).composite([
        { input: { create: { width: 200, height: 300, channels: 3, background: '#000' } }, left: 0, top: 0 },
      ]);
      await give(view, 'right-side.png', await halves.png().toBuffer());
      await ready(view);
      await nameOwn(view, ['Nose', 'Eye']);
      await setScale(view, '25');
      await tap(view, [100, 250]);
      await turnOver(view);
      await tap(view, [50, 250]);
      await tap(view, [150, 100]);
      expect(await textOf(view, 'record')).toMatch(
        /picture: "images\/right-side-turned\.png"\s+mirrored: true\s+scale: \{ from: \[300\.\d, 250\.\d\], to: \[\d+\.\d/,
      );
      const [download] = await Promise.all([view.waitForEvent('download'), press(view, 'save-picture')]);
      const { data, info } = await sharp(await readFile(await download.path()))
        .raw()
        .toBuffer({ resolveWithObject: true });
      expect([data[0], data[(info.width - 1) * info.channels]]).toEqual([255, 0]);
    });
  });

  test('that was turned over is turned back and again by undo, with every step before it', async () => {
    await atBench(async (view) => {
      await openPlain(view, 400, 300);
      await nameOwn(view, ['Nose', 'Eye']);
      await setScale(view, '25');
      for (const place of [[100, 250], [200, 250], [150, 100]] as const) await tap(view, place); // prettier-ignore
      expect(await textOf(view, 'record')).toMatch(/plain\.png[\s\S]*from: \[100/);
      await turnOver(view);
      expect(await textOf(view, 'record')).toMatch(/plain-turned\.png[\s\S]*from: \[(300|299)/);
      await press(view, 'undo');
      expect(await notes(view)).toMatch(/as it was taken/);
      expect(await textOf(view, 'record')).toMatch(/plain\.png[\s\S]*from: \[100/);
      await press(view, 'undo');
      expect(await inHand(view)).toBe('Nose');
      await press(view, 'redo');
      await press(view, 'redo');
      expect(await notes(view)).toMatch(/turned over/);
      expect(await textOf(view, 'record')).toMatch(/plain-turned\.png[\s\S]*from: \[(300|299)/);
      await tap(view, [50, 60]);
      await press(view, 'undo');
      expect(await textOf(view, 'record')).toMatch(/plain-turned\.png/);
      await view.reload();
      await ready(view);
      expect(await textOf(view, 'record')).toMatch(/plain-turned\.png/);
    });
  });
});
