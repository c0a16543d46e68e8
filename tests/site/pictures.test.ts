import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { Page } from 'playwright';
import { closePage, openPage, useBrowser, type Opened } from './open-page.ts';

const address = `${inject('siteUrl')}reed-trunks/`;
useBrowser();

/** Whether every picture of a part of the page has come. */
const haveCome = (view: Page, selector: string) =>
  view
    .locator(`${selector} img`)
    .evaluateAll((images) =>
      images
        .filter((image) => image.checkVisibility())
        .map((image) => (image as HTMLImageElement).naturalWidth > 0),
    );

describe('the card of a broken animal', () => {
  let opened: Opened;
  const card = '#evidence-nasal-position-limnorhina-fracta';
  beforeAll(async () => {
    opened = await openPage(address + card);
    await opened.view.waitForLoadState('networkidle');
  });
  afterAll(() => closePage(opened));

  test('has its small skull, of how many landmarks it is, and its picture with points on it', async () => {
    const { view, faults } = opened;
    await view.locator(`${card} .photo`).scrollIntoViewIfNeeded();
    await view.waitForLoadState('networkidle');
    expect(await haveCome(view, `${card} .card-skull`)).toEqual([true, true]);
    expect(await haveCome(view, `${card} .photo`)).toEqual([true]);
    expect(await view.locator(`${card} .card-skull figcaption`).innerText()).toMatch(
      /^Diagram from \d+ landmarks of OBM 1183/,
    );
    const dots = await view.locator(`${card} .photo-spots`).getAttribute('d');
    expect(dots!.match(/M/g)).toHaveLength(41);
    expect(faults).toEqual([]);
  });

  test('has the plate show its animal, which the story beneath does not take away', async () => {
    const { view } = opened;
    const shown = () => view.locator('.caption:not([hidden])').getAttribute('data-of');
    expect(await shown()).toBe('limnorhina-fracta');
    await view.mouse.move(200, 10);
    await view.evaluate(() => document.querySelector('[data-step="2"]')!.scrollIntoView());
    await view.waitForTimeout(200);
    expect(await shown()).toBe('limnorhina-fracta');
  });

  test('leads to the picture at large, with the names of its points', async () => {
    const { view } = opened;
    await view.locator(`${card} a[href$="#picture-obm-1183"]`).click();
    const article = view.locator('#picture-obm-1183');
    expect(await article.locator('.photo-names li').count()).toBe(41);
    expect(await article.innerText()).toMatch(/A diagram, not a photograph\.[\s\S]*CC0-1\.0/);
  });

  test('is printed in lines: the picture of bone is left away', async () => {
    const { view } = opened;
    await view.emulateMedia({ media: 'print' });
    const shown = await view
      .locator(`${card} .card-skull img`)
      .evaluateAll((images) =>
        images.filter((image) => image.checkVisibility()).map(({ className }) => className),
      );
    expect(shown).toEqual(['card-skull-print']);
    await view.emulateMedia({ media: 'screen' });
  });
});

describe('the skull of a fragment', () => {
  test('is bone alone at first, and is restored and hidden again when the visitor asks', async () => {
    const opened = await openPage(address, { reducedMotion: 'reduce' });
    const { view, faults } = opened;
    const current = () => view.locator('.caption:not([hidden])').getAttribute('data-of');
    for (let step = 0; step < 30 && (await current()) !== 'calathorhina-mira'; step++)
      await view.click('[data-walk="1"]');
    const button = view.locator('.caption:not([hidden]) .restoration');
    const restored = () =>
      view
        .locator('.plate-wide .layer-focus.in-focus > .skull')
        .evaluate((skull) => getComputedStyle(skull).getPropertyValue('--restored').trim());
    expect([await restored(), await button.innerText()]).toEqual(['0', 'With restoration']);
    await button.click();
    expect([await restored(), await button.innerText()]).toEqual(['', 'Bone only']);
    expect(await view.locator('.caption:not([hidden])').innerText()).toContain('Dotted: the two ends');
    await view.waitForSelector('#skull-calathorhina-mira .skull-limits', { state: 'attached' });
    await button.click();
    expect(await restored()).toBe('0');
    expect(faults).toEqual([]);
    await closePage(opened);
  });
});

test('a small skull on the plate calls up its animal, and a phone fetches none', async () => {
  const wide = await openPage(address);
  const small = wide.view.locator(
    '.plate-wide .layer-small-skulls[data-of="limnorhina-fracta"] .small-skull',
  );
  await small.click();
  expect(await wide.view.locator('.caption:not([hidden])').getAttribute('data-of')).toBe('limnorhina-fracta');
  expect(await small.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBeGreaterThan(0);
  expect(wide.faults).toEqual([]);
  await closePage(wide);
  const phone = await openPage(address, { viewport: { width: 390, height: 844 } });
  await phone.view.waitForLoadState('networkidle');
  const fetched = await phone.view.evaluate(() =>
    performance.getEntriesByType('resource').filter(({ name }) => name.includes('/skulls/small/')),
  );
  expect(fetched).toEqual([]);
  await closePage(phone);
});
