import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { partNames } from '../../components/parts/address.ts';
import { closePage, openPage, overflowOf, screens, useBrowser } from './open-page.ts';
import { openingWeight } from './opening-weight.ts';

const explainer = `${inject('siteUrl')}reed-trunks/`;
useBrowser();

/** What only the whole of a part has. */
const wholeOf = { slice: '.slice-row', relatives: '.kin-tree', change: '.change-chart', pictures: '.photo' };

/** A context whose visitor asks to save data: parts come only where they are wanted. */
async function savingData(view: Page): Promise<void> {
  await view.addInitScript(() =>
    Object.defineProperty(navigator, 'connection', { value: { saveData: true } }),
  );
  await view.goto(explainer, { waitUntil: 'load' });
}

test('the explainer opens with at most 90 KB of page, sheets and script, compressed, of it 35 KB of script', async () => {
  const { html, css, script } = await openingWeight(
    inject('siteFolder'),
    'reed-trunks/index.html',
    '/museum/',
  );
  expect(html + css + script).toBeLessThanOrEqual(90_000);
  expect(script).toBeLessThanOrEqual(35_000);
});

describe.each(screens)('without script, on a $name', ({ width, height }) => {
  const options = { viewport: { width, height }, javaScriptEnabled: false };

  test('each part says in short what it finds, and leads to a page of its own that has it whole', async () => {
    const { view } = await openPage(explainer, options);
    for (const part of partNames) {
      const place = view.locator(`#${part}`);
      expect(await place.locator('h2').count(), part).toBe(1);
      expect((await place.locator('p').allInnerTexts()).length, part).toBeGreaterThanOrEqual(3);
      await place.locator('a').click();
      await expect.poll(() => view.url()).toBe(`${explainer}parts/${part}/`);
      await view.waitForLoadState('load');
      expect(await view.locator(wholeOf[part]).filter({ visible: true }).count(), part).toBeGreaterThan(0);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      await view.goBack();
    }
    await closePage({ view });
  });
});

describe('with script', () => {
  test('all parts come by themselves once the page has opened, in their order', async () => {
    const { view, faults } = await openPage(explainer);
    for (const part of partNames)
      expect(await view.locator(`#${part} ${wholeOf[part]}`).count(), part).toBeGreaterThan(0);
    expect(
      await view
        .locator('body > section')
        .evaluateAll((all, names) => all.map(({ id }) => id).filter((id) => names.includes(id)), [
          ...partNames,
        ] as string[]),
    ).toEqual([...partNames]);
    expect(faults).toEqual([]);
    await closePage({ view });
  });

  test('a link of the story into a part brings the part and goes there, and back leads back', async () => {
    const { view } = await openPage('about:blank');
    await savingData(view);
    expect(await view.locator('.later-part').count()).toBe(partNames.length);
    const link = view.locator('.story a[href*="/parts/change/#size-"]');
    await link.click();
    const place = view.locator('#size-nasal-position');
    await expect.poll(() => place.count()).toBe(1);
    await expect
      .poll(() => new URL(view.url()).pathname + new URL(view.url()).hash)
      .toBe('/museum/reed-trunks/#size-nasal-position');
    await expect.poll(async () => Math.abs((await place.boundingBox())!.y)).toBeLessThan(200);
    await view.goBack();
    await expect.poll(() => new URL(view.url()).hash).toBe('');
    await closePage({ view });
  });

  test('an address that names a place in a part is gone to', async () => {
    const { view } = await openPage(`${explainer}#picture-obm-1262`);
    await expect
      .poll(async () => Math.abs((await view.locator('#picture-obm-1262').boundingBox())!.y))
      .toBeLessThan(200);
    await closePage({ view });
  });

  test('a page that is printed at once is printed with all its parts, in their own style', async () => {
    const { view } = await openPage('about:blank');
    await savingData(view);
    const left = await view.evaluate(() => {
      dispatchEvent(new Event('beforeprint'));
      return document.querySelectorAll('.later-part').length;
    });
    expect(left).toBe(0);
    expect(
      await view
        .locator('.change-chart')
        .first()
        .evaluate((chart) => getComputedStyle(chart).direction),
    ).toBe('ltr');
    await closePage({ view });
  });

  test('the browser itself asks for the parts when it prints', async () => {
    const { view } = await openPage('about:blank');
    await savingData(view);
    await view.pdf({ format: 'A4' });
    expect(await view.locator('.later-part').count()).toBe(0);
    await closePage({ view });
  });

  test('a part that cannot be had leaves its short words and the way to its page', async () => {
    const { view } = await openPage('about:blank');
    await view.route('**/parts/**', (route) => route.abort());
    await savingData(view);
    const link = view.locator('#change.later-part a');
    await link.scrollIntoViewIfNeeded();
    await view.waitForTimeout(300);
    expect(await link.isVisible()).toBe(true);
    await view.unroute('**/parts/**');
    await link.click();
    await expect.poll(() => view.locator('#change .change-chart').count()).toBeGreaterThan(0);
    await closePage({ view });
  });
});
