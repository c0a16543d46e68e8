import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { closePage, openPage, overflowOf, screens, useBrowser } from './open-page.ts';

const address = `${inject('siteUrl')}reed-trunks/`;
useBrowser();

const figure = (view: Page, scale: string) => view.locator(`.series-figure.series-${scale}`);
const choice = (view: Page, scale: string) => view.locator(`.series-switch [value="${scale}"]`);

/** Widths on the screen of what a figure shows: numerals of skulls, and the bar of millimetres. */
async function shownIn(view: Page, scale: string): Promise<{ numerals: string[]; bars: number }> {
  return figure(view, scale).evaluate((shown) => ({
    numerals: [...shown.querySelectorAll('.series-number')].map((each) => each.textContent!.trim()),
    bars: shown.querySelectorAll('.series-bar').length,
  }));
}

describe.each(screens)('the series on a $name', ({ width, height }) => {
  test('keeps the page within its width and its choices to the touch', async () => {
    const { view } = await openPage(address, { viewport: { width, height } });
    await view.locator('#series').scrollIntoViewIfNeeded();
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    for (const label of await view.locator('.series-switch label').all())
      expect((await label.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    await closePage({ view });
  });

  test('can be looked through to its last skull, where it is wider than the screen', async () => {
    const { view } = await openPage(address, { viewport: { width, height } });
    const shown = figure(view, 'line');
    await shown.scrollIntoViewIfNeeded();
    await shown.focus();
    await view.keyboard.press('End');
    await shown.evaluate((each) => each.scrollTo({ left: each.scrollWidth }));
    const frame = (await shown.boundingBox())!;
    const last = (await shown.locator('.series-number').last().boundingBox())!;
    expect(last.x + last.width).toBeLessThanOrEqual(frame.x + frame.width + 1);
    await closePage({ view });
  });
});

describe('the series', () => {
  test('changes its scale by the keyboard alone, and shows one scale at a time', async () => {
    const { view, faults } = await openPage(address);
    await choice(view, 'line').focus();
    expect(await figure(view, 'line').isVisible()).toBe(true);
    expect(await figure(view, 'size').isVisible()).toBe(false);
    await view.keyboard.press('ArrowRight');
    expect(await choice(view, 'size').isChecked()).toBe(true);
    expect(await figure(view, 'line').isVisible()).toBe(false);
    expect(await figure(view, 'size').isVisible()).toBe(true);
    await view.keyboard.press('ArrowLeft');
    expect(await figure(view, 'line').isVisible()).toBe(true);
    expect(faults).toEqual([]);
    await closePage({ view });
  });

  test('works without script, by the same choice', async () => {
    const { view } = await openPage(address, { javaScriptEnabled: false });
    await view.locator('.series-switch label', { hasText: 'true size' }).click();
    expect(await figure(view, 'size').isVisible()).toBe(true);
    expect(await figure(view, 'line').isVisible()).toBe(false);
    await closePage({ view });
  });

  test('fetches the pictures of a scale only when it is looked at, and its lines only for print', async () => {
    const { view } = await openPage(address);
    const asked: string[] = [];
    view.on('request', (request) => asked.push(new URL(request.url()).pathname));
    const pictures = () =>
      asked.filter((path) => path.includes('/series/')).map((path) => path.split('/').at(-1));
    await view.locator('#series').scrollIntoViewIfNeeded();
    await expect.poll(pictures).toEqual(['line.webp', 'line.over.svg']);
    await choice(view, 'size').click();
    await expect.poll(pictures).toEqual(['line.webp', 'line.over.svg', 'size.webp', 'size.over.svg']);
    await expect
      .poll(() =>
        figure(view, 'size')
          .locator('img')
          .evaluateAll((images) =>
            (images as HTMLImageElement[]).map(({ naturalWidth }) => naturalWidth > 500),
          ),
      )
      .toEqual([true, true, false]);
    await view.emulateMedia({ media: 'print' });
    await figure(view, 'size').scrollIntoViewIfNeeded();
    await expect.poll(() => pictures().at(-1)).toBe('size.print.svg');
    await closePage({ view });
  });

  test('numbers its skulls as its list does, a bar of millimetres at true size alone', async () => {
    const { view } = await openPage(address);
    const listed = await view
      .locator('.series-list li')
      .evaluateAll((items) => items.map((item) => String((item as HTMLLIElement).value)));
    const line = await shownIn(view, 'line');
    const size = await shownIn(view, 'size');
    const inOrder = (numerals: readonly string[]) => [...numerals].sort((one, other) => +one - +other);
    expect(inOrder(line.numerals)).toEqual(listed);
    expect(listed).toEqual(expect.arrayContaining(size.numerals));
    expect([line.bars, size.bars]).toEqual([0, 1]);
    for (const item of await view.locator('.series-list li').allInnerTexts())
      expect(item).toMatch(/million years|living/);
    await closePage({ view });
  });

  test('shows the chosen scale on paper, without the choice and whole', async () => {
    const { view } = await openPage(address, { viewport: { width: 720, height: 1000 } });
    await choice(view, 'size').check();
    await view.emulateMedia({ media: 'print' });
    expect(await view.locator('.series-switch').isVisible()).toBe(false);
    expect(await figure(view, 'size').isVisible()).toBe(true);
    expect(await figure(view, 'line').isVisible()).toBe(false);
    const cut = await figure(view, 'size').evaluate((each) => each.scrollWidth - each.clientWidth);
    expect(cut).toBeLessThanOrEqual(0);
    await closePage({ view });
  });
});
