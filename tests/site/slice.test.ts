import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import type { SliceBlock } from '../../components/slice/slice-block.ts';
import { cutBranches } from '../../components/slice/slice-at.ts';
import { closePage, openPage, overflowOf, screens, useBrowser, type Opened } from './open-page.ts';

const address = `${inject('siteUrl')}reed-trunks/`;
const blockFile = join(inject('siteFolder'), 'reed-trunks', 'slice', 'en.json');
const block = JSON.parse(await readFile(blockFile, 'utf8')) as SliceBlock;
useBrowser();

const open = (
  path = '',
  options: { width?: number; height?: number; javaScriptEnabled?: boolean; reducedMotion?: 'reduce' } = {},
): Promise<Opened> => {
  const { width = 1440, height = 900, ...others } = options;
  return openPage(address + path, { viewport: { width, height }, ...others });
};

const handle = (view: Page) => view.locator('.slice-handle');
const shown = (view: Page) =>
  view
    .locator('.slice-row:first-child .slice-branch')
    .evaluateAll((items) => items.map((item) => (item as HTMLElement).dataset['branch']!));
const wanted = (age: number) => cutBranches(block, age).map(({ branch }) => branch.id);
const count = (view: Page) => view.locator('.slice-row:first-child .slice-count').innerText();
const ageOf = async (view: Page) => Number(await handle(view).getAttribute('aria-valuenow'));

/** How many skulls come in softly when a button is pressed. */
function comings(view: Page, button: string): Promise<number> {
  return view.evaluate(async (selector) => {
    let count = 0;
    const animate = Element.prototype.animate;
    Element.prototype.animate = function (...given) {
      if (this.matches('.slice-branch')) count++;
      return animate.apply(this, given);
    };
    const ageNow = () => document.querySelector('.slice-handle')!.getAttribute('aria-valuenow');
    const before = ageNow();
    document.querySelector<HTMLElement>(selector)!.click();
    while (ageNow() === before) await new Promise(requestAnimationFrame);
    return count;
  }, button);
}

/** Waits until the row shows what a line at an age cuts. */
async function untilCut(view: Page, age: number): Promise<void> {
  await expect.poll(() => ageOf(view)).toBe(age);
  await expect.poll(() => shown(view)).toEqual(wanted(age));
}

describe.each(screens)('the slice on a $name', ({ width, height }) => {
  test('keeps its controls to the touch and the page within its width', async () => {
    const { view } = await open('?cut=40', { width, height });
    await untilCut(view, 40);
    for (const control of await view.locator('.slice-controls button, .slice-reach').all())
      expect((await control.boundingBox())!.height).toBeGreaterThanOrEqual(40);
    for (const button of await view.locator('.slice-controls button').all())
      expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    await closePage({ view });
  });
});

describe('the slice', () => {
  test('shows the age of the story without script, in words and shapes', async () => {
    const { view } = await open('parts/slice/', { javaScriptEnabled: false });
    expect(await count(view)).toBe('32 million years ago: at least 11 branches');
    expect(await shown(view)).toEqual(wanted(32));
    const words = await view.locator('.slice-branch').allInnerTexts();
    for (const word of words)
      expect(word).toMatch(/shape worked out from relatives|Diagram from \d+ landmarks of/);
    expect(await view.locator('.slice-controls').isVisible()).toBe(false);
    await closePage({ view });
  });

  test('asks for shapes along the tree only when the line is first moved, and moves by keys', async () => {
    const { view, faults } = await open();
    const asked: string[] = [];
    view.on('request', (request) => asked.push(request.url()));
    await view.locator('.slice').scrollIntoViewIfNeeded();
    await view.waitForTimeout(300);
    expect(asked.filter((url) => url.includes('/slice/'))).toEqual([]);
    await handle(view).focus();
    await view.keyboard.press('ArrowDown');
    await untilCut(view, 32.5);
    expect(asked.filter((url) => url.includes('/slice/'))).toHaveLength(1);
    await view.keyboard.press('PageUp');
    await untilCut(view, 27.5);
    await view.keyboard.press('End');
    await untilCut(view, 0);
    expect(await handle(view).getAttribute('aria-valuetext')).toBe(
      '0 million years ago: at least 2 branches',
    );
    await view.keyboard.press('Home');
    await untilCut(view, 54.9);
    expect(faults).toEqual([]);
    await closePage({ view });
  });

  test('moves where the chart is clicked, and goes with the pointer', async () => {
    const { view } = await open('?cut=40');
    await untilCut(view, 40);
    await handle(view).scrollIntoViewIfNeeded();
    const box = (await view.locator('.slice-line-layer').boundingBox())!;
    const heightAt = (age: number) => {
      const { top, bottom, oldestMa, height } = block.chart;
      return box.y + ((top + (age / oldestMa) * (bottom - top)) / height) * box.height;
    };
    await view.mouse.click(box.x + box.width / 2, heightAt(20));
    await expect.poll(async () => Math.abs((await ageOf(view)) - 20)).toBeLessThan(0.2);
    await view.mouse.move(box.x + box.width / 2, heightAt(await ageOf(view)));
    await view.mouse.down();
    await view.mouse.move(box.x + box.width / 2, heightAt(10), { steps: 4 });
    await view.mouse.up();
    await expect.poll(async () => Math.abs((await ageOf(view)) - 10)).toBeLessThan(0.2);
    await untilCut(view, await ageOf(view));
    await closePage({ view });
  });

  test('is drawn with fewer points while it moves, and with all of them, in the order of the document, when it rests', async () => {
    const { view } = await open('?cut=40');
    await untilCut(view, 40);
    await view.locator('.slice-row:first-child .slice-ruled').first().scrollIntoViewIfNeeded();
    const counts = () =>
      view
        .locator('.slice-row:first-child .slice-ruled .slice-bone')
        .evaluateAll((bones) => bones.map((bone) => (bone as SVGPolygonElement).points.numberOfItems));
    const resting = await counts();
    const moving = await view.evaluate(async () => {
      const frame = () => new Promise(requestAnimationFrame);
      // The row learns what is in sight a frame after a scroll.
      for (let count = 0; count < 3; count++) await frame();
      const key = new KeyboardEvent('keydown', { key: 'ArrowDown', bubbles: true, repeat: true });
      document.querySelector('.slice-handle')!.dispatchEvent(key);
      const bones = document.querySelectorAll<SVGPolygonElement>(
        '.slice-row:first-child .slice-ruled .slice-bone',
      );
      return [...bones].map((bone) => bone.points.numberOfItems);
    });
    expect(Math.min(...moving)).toBeLessThan(Math.min(...resting));
    await expect.poll(async () => Math.min(...(await counts()))).toBe(Math.min(...resting));
    await untilCut(view, 40.5);
    const { view: fresh } = await open('?cut=40.5');
    await untilCut(fresh, 40.5);
    const points = (page: Page) =>
      page
        .locator('.slice-row:first-child .slice-ruled :is(polygon, polyline)')
        .evaluateAll((all) => all.map((line) => line.getAttribute('points')));
    expect(await points(view)).toEqual(await points(fresh));
    await closePage({ view });
    await closePage({ view: fresh });
  });

  test('keeps its chart in sight above the row on a phone, and lets it go where the screen is too low', async () => {
    const topAfterScroll = async (width: number, height: number) => {
      const { view } = await open('?cut=33', { width, height });
      await untilCut(view, 33);
      await view
        .locator('.slice-branches')
        .first()
        .evaluate((row) => {
          scrollBy({ top: row.getBoundingClientRect().top - 80, behavior: 'instant' });
        });
      const box = (await view.locator('.slice-chart').boundingBox())!;
      await closePage({ view });
      return box.y;
    };
    expect(await topAfterScroll(390, 844)).toBeCloseTo(0, 0);
    expect(await topAfterScroll(320, 256)).toBeLessThan(-200);
  });

  test('goes from fork to fork by its buttons: one branch becomes two', async () => {
    const { view } = await open('?cut=40');
    await untilCut(view, 40);
    await view.locator('[data-fork="older"]').click();
    await expect.poll(() => ageOf(view)).toBeGreaterThan(40);
    const before = (await shown(view)).length;
    await view.locator('[data-fork="younger"]').click();
    await expect.poll(async () => (await shown(view)).length).toBe(before + 1);
    await view.locator('[data-go="32"]').click();
    await untilCut(view, 32);
    expect(await view.locator('tree-slice [role="status"]').innerText()).toBe(await count(view));
    await closePage({ view });
  });

  test('keeps the age in the address, beside what else stands there', async () => {
    const { view } = await open('?without=riparhina-dura&cut=14.2');
    await untilCut(view, 14.2);
    await handle(view).focus();
    await view.keyboard.press('ArrowUp');
    await untilCut(view, 13.7);
    await expect.poll(() => new URL(view.url()).search).toBe('?without=riparhina-dura&cut=13.7');
    await view.reload();
    await untilCut(view, 13.7);
    await closePage({ view });
  });

  test('has ink where bones are of that age, and the same shapes in the browser as in the page', async () => {
    const { view } = await open('parts/slice/', { javaScriptEnabled: false });
    const lines = (page: Page) =>
      page
        .locator('.slice-row:first-child .slice-ruled :is(polygon, polyline)')
        .evaluateAll((all) => all.map((line) => line.getAttribute('points')));
    const drawn = await lines(view);
    expect(drawn.length).toBeGreaterThan(20);
    await closePage({ view });
    const { view: live } = await open('?cut=32');
    await untilCut(live, 32);
    expect(await lines(live)).toEqual(drawn);
    await live.locator('.slice-inked img').first().scrollIntoViewIfNeeded();
    const inked = await live
      .locator('.slice-inked')
      .evaluateAll((items) => items.map((item) => (item as HTMLElement).dataset['branch']));
    expect(inked.sort()).toEqual(['brevirhina-tarda', 'meridorhina-lata']);
    await expect
      .poll(() =>
        live
          .locator('.slice-inked img')
          .first()
          .evaluate((img: HTMLImageElement) => img.naturalWidth),
      )
      .toBeGreaterThan(100);
    await closePage({ view: live });
  });

  test('says so and keeps the ages of the story when shapes cannot be had', async () => {
    const { view } = await open();
    await view.route('**/slice/en.json', (route) => route.abort());
    await view.locator('[data-fork="older"]').click();
    await expect.poll(() => view.locator('.slice-failed').isVisible()).toBe(true);
    expect(await shown(view)).toEqual(wanted(32));
    await view.unroute('**/slice/en.json');
    await view.locator('[data-fork="older"]').click();
    await expect.poll(() => ageOf(view)).toBeGreaterThan(32);
    expect(await view.locator('.slice-failed').isVisible()).toBe(false);
    await closePage({ view });
  });

  test('moves nothing by itself where less motion is asked for', async () => {
    const { view } = await open('?cut=40', { reducedMotion: 'reduce' });
    await untilCut(view, 40);
    expect(await comings(view, '[data-fork="younger"]')).toBe(0);
    await closePage({ view });
    const { view: moving } = await open('?cut=40');
    await untilCut(moving, 40);
    expect(await comings(moving, '[data-fork="younger"]')).toBeGreaterThan(0);
    await closePage({ view: moving });
  });

  test('is fetched in less than 40 KB', async () => {
    expect(gzipSync(await readFile(blockFile)).length).toBeLessThan(40_000);
  });
});
