import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import {
  atBench,
  give,
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
      await tap(view, [100, 250]);
      await turnOver(view);
      await tap(view, [50, 250]);
      const turned = await textOf(view, 'record');
      expect(turned).toMatch(/plain-turned\.png/);
      await press(view, 'undo');
      expect(await textOf(view, 'record')).toMatch(/plain-turned\.png/);
      await press(view, 'undo');
      expect(await notes(view)).toMatch(/as it was taken/);
      expect(await textOf(view, 'record')).not.toMatch(/turned|mirrored/);
      await tap(view, [200, 250]);
      expect(await textOf(view, 'record')).toMatch(/from: \[100\.\d, 250\.\d\], to: \[200\.\d, 250/);
      for (let steps = 0; steps < 2; steps++) await press(view, 'undo');
      expect(await textOf(view, 'record')).not.toMatch(/from: \[100/);
      for (let steps = 0; steps < 2; steps++) await press(view, 'redo');
      expect(await textOf(view, 'record')).toMatch(/from: \[100/);
      await turnOver(view);
      await view.waitForTimeout(200);
      await view.reload();
      await ready(view);
      expect(await textOf(view, 'record')).toMatch(/plain-turned\.png/);
    });
  });
});
