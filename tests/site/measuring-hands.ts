import sharp from 'sharp';
import type { BrowserContextOptions, Page } from 'playwright';
import { inject } from 'vitest';
import { closePage, openPage, useBrowser } from './open-page.ts';

/** Hands for the tests of the measuring bench: they open pictures, tap places and read what is taken away. */
export const site = inject('siteUrl');
export const bench = `${site}bench/`;

useBrowser();

/** A place in the picture, px. */
export type Place = readonly [number, number];

/** Opens the bench, works at it, and gives back errors, and requests other than for its own parts. */
export async function atBench(
  work: (view: Page) => Promise<void>,
  options: BrowserContextOptions = {},
): Promise<string[]> {
  const { view, faults } = await openPage(bench, { reducedMotion: 'reduce', ...options });
  await view.waitForLoadState('networkidle');
  view.on('request', (request) => {
    if (!request.url().startsWith('blob:')) faults.push(`asked ${request.url()}`);
  });
  await work(view);
  await closePage({ view });
  return faults;
}

/** Gives the bench a file. */
export const give = (view: Page, name: string, buffer: Buffer, mimeType = 'image/png') =>
  view.locator('[data-file]').setInputFiles({ name, mimeType, buffer });
/** What the bench says of the picture. */
export const notes = (view: Page) => view.locator('[data-picture-notes]').innerText();
/** The name of the point in hand. */
export const inHand = (view: Page) => view.locator('[data-hand-name]').innerText();
/** Presses a button by what it does. */
export const press = (view: Page, action: string) => view.click(`[data-do="${action}"]`);
/** A text that can be taken away. */
export const textOf = (view: Page, part: string) => view.locator(`[data-away="${part}"] pre`).textContent();
/** Waits for the picture. */
export const ready = (view: Page) => view.waitForSelector('.has-picture');

/** Opens a plain picture of a size. */
export async function openPlain(view: Page, width = 800, height = 600): Promise<void> {
  const plain = { create: { width, height, channels: 3 as const, background: '#345' } };
  await give(view, 'plain.png', await sharp(plain).png().toBuffer());
  await ready(view);
}

/** Where a place of the picture is seen on the stage, by what the browser says of the picture's own transform. */
export async function seenAt(view: Page, [x, y]: Place): Promise<{ x: number; y: number }> {
  return view.locator('[data-picture]').evaluate(
    (image, [px, py]) => {
      const { x: left, y: top } = new DOMMatrix(getComputedStyle(image).transform).transformPoint({
        x: px,
        y: py,
      });
      return { x: left, y: top };
    },
    [x, y] as [number, number],
  );
}

/** Taps a place of the picture, wherever it is seen. */
export const tap = async (view: Page, place: Place) =>
  view.locator('[data-stage]').click({ position: await seenAt(view, place) });

/** Takes names of its own for the points, and names the specimen. */
export async function nameOwn(view: Page, names: readonly string[]): Promise<void> {
  await view.selectOption('[data-scheme]', '');
  await view.fill('[data-own-names]', names.join('\n'));
  await view.fill('[data-specimen]', 'Plate 1');
  await view.locator('[data-specimen]').blur();
}

/** Gives the length of the bar. */
export async function setScale(view: Page, mm: string): Promise<void> {
  await view.fill('[data-scale-mm]', mm);
  await view.locator('[data-scale-mm]').blur();
}
