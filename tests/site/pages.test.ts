import { describe, expect, inject, test } from 'vitest';
import { closePage, openPage, overflowOf, screens, useBrowser, type Opened } from './open-page.ts';
import { readStep } from './visit.ts';

const site = inject('siteUrl');
const page = `${site}reed-trunks/`;
useBrowser();

const open = (width: number, height: number, javaScriptEnabled = true): Promise<Opened> =>
  openPage(page, { viewport: { width, height }, javaScriptEnabled });

describe.each(screens)('the explainer on a $name', ({ width, height }) => {
  test.each([true, false])('is whole with script %s', async (script) => {
    const { view, faults } = await open(width, height, script);
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    expect(await view.locator('.plate:visible').count()).toBe(1);
    expect(await view.locator('.step').count()).toBe(9);
    expect(await view.locator('#values .values tr[data-of]').count()).toBe(24);
    expect(await view.locator('.card').count()).toBe(24);
    expect(
      await view.locator('.plate:visible .layer-focus.in-focus .skull').count(),
      'a skull is in focus',
    ).toBe(1);
    expect(await view.locator('.caption:visible').count()).toBe(1);
    await expect.poll(() => view.getByText('Invented for teaching').isVisible()).toBe(true);
    expect(faults).toEqual([]);
    await closePage({ view });
  });

  test('brings the animal of a step into focus', async () => {
    const { view } = await open(width, height);
    await readStep(view, '.step[data-focus^="limnorhina-fracta"]');
    await expect
      .poll(() => view.locator('.caption:visible').getAttribute('data-of'))
      .toBe('limnorhina-fracta');
    expect(await view.locator('.plate:visible .layer-focus.in-focus').first().getAttribute('data-of')).toBe(
      'limnorhina-fracta',
    );
    await closePage({ view });
  });

  test('opens a card beside the figure and gives the focus back when it closes', async () => {
    const { view } = await open(width, height);
    const link = view.locator('.caption:visible a[data-evidence]');
    await link.click();
    const card = view.locator('.card.open');
    await expect.poll(() => card.count()).toBe(1);
    expect(await card.evaluate((element) => element === document.activeElement)).toBe(true);
    const [cardBox, rulerBox] = await Promise.all([
      card.boundingBox(),
      view.locator('.plate:visible .layer-ruler').boundingBox(),
    ]);
    const apart =
      cardBox!.x + cardBox!.width <= rulerBox!.x + 1 ||
      cardBox!.y >= rulerBox!.y + rulerBox!.height - 1 ||
      cardBox!.x >= rulerBox!.x + rulerBox!.width;
    expect(apart, 'the card leaves the ruler in view').toBe(true);
    await view.keyboard.press('Escape');
    await expect.poll(() => card.count()).toBe(0);
    expect(await link.evaluate((element) => element === document.activeElement)).toBe(true);
    await closePage({ view });
  });
});

test.each([900, 1000, 1099, 1100, 1280, 1439, 1440, 1920])(
  'an open card hides the story beside it whole, and none of the figure, at %d px',
  async (width) => {
    const { view } = await open(width, 800);
    await view.locator('.caption:visible a[data-evidence]').click();
    await expect.poll(() => view.locator('.card.open').count()).toBe(1);
    const ends = await view.evaluate(() => {
      const boxOf = (selector: string) => document.querySelector(selector)!.getBoundingClientRect();
      return { card: boxOf('.card.open').right, story: boxOf('.story').right, figure: boxOf('.mat').left };
    });
    expect(ends.card).toBeGreaterThanOrEqual(ends.story);
    expect(ends.card).toBeLessThanOrEqual(ends.figure);
    await closePage({ view });
  },
);

describe('the explainer', () => {
  test('prints no number in prose that is not in its compiled values', async () => {
    const { view } = await open(1440, 900, false);
    const printed = await view.locator('.step .value b').allTextContents();
    const table = await view.locator('.values td.number a').allTextContents();
    expect(printed.length).toBeGreaterThan(5);
    for (const value of printed) expect(table.map((text) => text.trim())).toContain(value);
    await closePage({ view });
  });

  test('never shows an inferred value without its brackets, nor a bound without its side', async () => {
    const { view } = await open(1440, 900, false);
    for (const text of await view.locator('.value-inferred b').allTextContents())
      expect(text).toMatch(/\[.+–.+\]/);
    for (const text of await view.locator('.value-bounded b').allTextContents())
      expect(text).toMatch(/at (least|most)/);
    await closePage({ view });
  });

  test('carries edition, digests and the word invented at its foot', async () => {
    const { view } = await open(1440, 900, false);
    const foot = await view.locator('.colophon').innerText();
    expect(foot).toMatch(/Edition 1 of 2026-/);
    expect(foot).toMatch(/Content [0-9a-f]{12} · results [0-9a-f]{12}/);
    expect(foot).toMatch(/invented/);
    await closePage({ view });
  });
});
