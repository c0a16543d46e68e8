import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { closePage, openPage, overflowOf, screens, useBrowser, type Opened } from './open-page.ts';

const address = `${inject('siteUrl')}reed-trunks/`;
const [first, second] = ['riparhina-dura', 'calamorhina-vivax'];
useBrowser();

/** Comes near the section and waits until its code, which is fetched only then, has taken over. */
async function settle(view: Page): Promise<void> {
  await view.locator('take-away').scrollIntoViewIfNeeded();
  await view.evaluate(() => customElements.whenDefined('take-away').then(() => undefined));
}

const open = async (
  path = '',
  options: { width?: number; height?: number; javaScriptEnabled?: boolean } = {},
): Promise<Opened> => {
  const { width = 1440, height = 900, javaScriptEnabled = true } = options;
  const opened = await openPage(address + path, { viewport: { width, height }, javaScriptEnabled });
  if (javaScriptEnabled) await settle(opened.view);
  return opened;
};

const box = (view: Page, taxon: string) => view.locator(`.take-away input[value="${taxon}"]`);
const said = (view: Page, taxon: string) => view.locator(`[data-row="${taxon}"] .take-away-said`);
const marks = (view: Page, taxon: string) => view.locator(`.plate-wide .layer-marks[data-of="${taxon}"]`);

/** Animals of the wide plate in the order in which their marks are drawn. */
const order = (view: Page) =>
  view
    .locator('.plate-wide .layer-marks')
    .evaluateAll((groups) => groups.map((group) => group.getAttribute('data-of')!));

/** The compiled table of single animals: what relatives would have said, by name. */
async function compiledTable(view: Page): Promise<Map<string, string>> {
  const rows = await view
    .locator('.left-out-table tbody tr')
    .evaluateAll((all) =>
      all.map((row) => [...row.children].map((cell) => cell.textContent.trim().replace(/\s+/g, ' '))),
    );
  return new Map(rows.map(([name, estimate]) => [name!, estimate!]));
}

describe.each(screens)('taking skulls away on a $name', ({ width, height }) => {
  test('keeps every row to the touch and the page within its width', async () => {
    const { view } = await open(`?without=${first},${second}`, { width, height });
    for (const label of await view.locator('.take-away-list label').all())
      expect((await label.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    for (const control of await view.locator('.take-away-bar :is(a, button)').all())
      expect((await control.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    await closePage({ view });
  });
});

describe('taking skulls away', () => {
  test('the code of the section is not fetched by a page that is only opened', async () => {
    const { view } = await openPage(address);
    const fetched = await view.evaluate(() =>
      performance.getEntriesByType('resource').map(({ name }) => name),
    );
    expect(fetched.filter((name) => /\/take-away\.[^/]+\.js$/.test(name))).toEqual([]);
    await settle(view);
    await closePage({ view });
  });

  test('says of each animal hidden alone what the compiled table says', async () => {
    const { view, faults } = await open();
    const table = await compiledTable(view);
    expect(table.size).toBe(21);
    for (const row of await view.locator('[data-row]:has(input)').all()) {
      const name = (await row.locator('.taxon').innerText()).trim();
      await row.locator('input').check();
      expect(await row.locator('.take-away-said').innerText()).toContain(
        `would have said ${table.get(name)!}.`,
      );
      await row.locator('input').uncheck();
    }
    expect(faults).toEqual([]);
    await closePage({ view });
  });

  test('keeps the hidden animals in the address, and back and forward work', async () => {
    const { view } = await open();
    await box(view, first!).check();
    await box(view, second!).check();
    expect(new URL(view.url()).search).toBe(`?without=${first},${second}`);
    await view.goBack();
    await expect.poll(() => box(view, second!).isChecked()).toBe(false);
    expect(await box(view, first!).isChecked()).toBe(true);
    await view.goBack();
    await expect.poll(() => box(view, first!).isChecked()).toBe(false);
    expect(await view.locator('.take-away-bar').isVisible()).toBe(false);
    await view.goForward();
    await expect.poll(() => box(view, first!).isChecked()).toBe(true);
    await closePage({ view });
  });

  test('a link carries it, and what it shows is what a visitor gets by hand', async () => {
    const byHand = await open();
    await box(byHand.view, first!).check();
    await box(byHand.view, second!).check();
    const linked = await open(`?without=${second},${first}`);
    for (const taxon of [first!, second!, 'calathorhina-mira']) {
      expect(await said(linked.view, taxon).innerText()).toBe(await said(byHand.view, taxon).innerText());
      expect(await marks(linked.view, taxon).innerHTML()).toBe(await marks(byHand.view, taxon).innerHTML());
    }
    await closePage(byHand);
    await closePage(linked);
  });

  test('the plate follows, and has its own marks again when skulls are put back', async () => {
    const { view } = await open();
    const built = await order(view);
    const before = await marks(view, first!).innerHTML();
    expect(before).toContain('disc');
    await box(view, first!).check();
    const hidden = await marks(view, first!).innerHTML();
    expect(hidden).toMatch(/class="ruled".*class="diamond".*class="miss-truth"/s);
    expect(hidden).not.toContain('disc');
    const drawn = await order(view);
    expect(drawn.indexOf(first!), 'its wide interval lies under every disc').toBeLessThan(
      drawn.indexOf('palustrina-communis'),
    );
    await view.locator('[data-put-back]').click();
    expect(await marks(view, first!).innerHTML()).toBe(before);
    expect(await order(view)).toEqual(built);
    expect(new URL(view.url()).search).toBe('');
    await closePage({ view });
  });

  test('works by keyboard alone and is announced', async () => {
    const { view } = await open();
    await box(view, first!).focus();
    await view.keyboard.press('Space');
    const status = view.locator('.take-away [role="status"]');
    expect(await status.textContent()).toMatch(
      /^Riparhina dura is hidden\. Relatives would have said .+ It really reads 22 ± 3/,
    );
    await view.keyboard.press('Space');
    expect(await status.textContent()).toBe('Riparhina dura is back.');
    await closePage({ view });
  });

  test('an open card hides its animal and puts it back', async () => {
    const { view } = await open(`#evidence-nasal-position-${first}`);
    const button = view.locator('.card.open [data-hide]');
    await button.click();
    expect(await button.innerText()).toBe('Put its skulls back');
    expect(new URL(view.url()).hash).toBe(`#evidence-nasal-position-${first}`);
    expect(await view.locator('.card.open [data-hidden-said]').innerText()).toBe(
      (await said(view, first!).textContent())!,
    );
    await button.click();
    expect(await box(view, first!).isChecked()).toBe(false);
    await closePage({ view });
  });

  test('the sentence speaks of those that are left', async () => {
    const { view } = await open(`?without=${first},${second}`);
    await expect.poll(() => view.locator('.take-away-sentence').textContent()).toMatch(/of 19 lie inside/);
    expect(await view.locator('.trait-misses').innerText()).toMatch(/of 21 lie inside/);
    await closePage({ view });
  });

  test('too few skulls are said to be too few, and no number stands', async () => {
    const { view } = await open();
    const all = await view
      .locator('.take-away input')
      .evaluateAll((boxes) => boxes.map((each) => (each as HTMLInputElement).value));
    await view.goto(`${address}?without=${all.slice(3).join(',')}`);
    await settle(view);
    expect(await view.locator('.take-away-too-few').isVisible()).toBe(true);
    expect(await view.locator('.take-away-said:visible').count()).toBe(0);
    await closePage({ view });
  });

  test('an animal that is ticked before the code has come is hidden when it comes', async () => {
    const { view } = await openPage(address, {});
    let send = () => {};
    const held = new Promise<void>((done) => (send = done));
    await view.route(/take-away\.[^/]*\.js/, async (route) => held.then(() => route.continue()));
    await box(view, first).check();
    expect(await said(view, first).isVisible()).toBe(false);
    const top = () => view.locator('.take-away-live').evaluate((list) => list.getBoundingClientRect().top);
    const stood = await top();
    send();
    await said(view, first).waitFor();
    expect(new URL(view.url()).searchParams.get('without')).toBe(first);
    expect(await top()).toBe(stood);
    await closePage({ view });
  });

  test('where the code cannot be had, the section shows the compiled table', async () => {
    const { view } = await openPage(address, {});
    await view.route(/take-away\.[^/]*\.js/, (route) => route.abort());
    await view.locator('take-away').scrollIntoViewIfNeeded();
    await view.locator('.take-away-unscripted').waitFor();
    expect(await view.locator('.left-out-table table').isVisible()).toBe(true);
    expect(await view.locator('.take-away input:visible').count()).toBe(0);
    await closePage({ view });
  });

  test('without script the section shows the compiled table, and says why', async () => {
    const { view } = await open('', { javaScriptEnabled: false });
    expect(await view.locator('.left-out-table table').isVisible()).toBe(true);
    expect(await view.locator('.take-away-unscripted').isVisible()).toBe(true);
    expect(await view.locator('.take-away input:visible').count()).toBe(0);
    expect(await view.locator('[data-hide]:visible').count()).toBe(0);
    expect((await compiledTable(view)).size).toBe(21);
    await closePage({ view });
  });
});

describe('an evidence card', () => {
  test('of a measured animal says what relatives would have said, as the table does', async () => {
    const { view } = await open('', { javaScriptEnabled: false });
    const table = await compiledTable(view);
    for (const card of await view.locator('.card:has(.left-out-card)').all()) {
      const name = (await card.locator('.card-name').innerText()).trim();
      expect(await card.locator('.left-out-card p').first().innerText()).toContain(
        `relatives would have said ${table.get(name)!};`,
      );
    }
    expect(await view.locator('.left-out-card').count()).toBe(table.size);
    await closePage({ view });
  });

  test('of an animal that relatives speak of gives the range over other choices beside its value', async () => {
    const { view } = await open('', { javaScriptEnabled: false });
    const spans = await view
      .locator('.card:has(.span)')
      .evaluateAll((cards) =>
        cards.map((card) => [card.getAttribute('data-of'), card.querySelector('.span')!.textContent.trim()]),
      );
    expect(spans.map(([taxon]) => taxon)).toEqual(['limnorhina-fracta', 'calathorhina-mira']);
    expect(spans[0]![1]).toMatch(/leave \d+–\d+\. Over other choices .*the ends reach \d+–\d+\./);
    expect(spans[1]![1]).toMatch(
      /the middle runs over \d+–\d+, and the ends of the brackets reach \d+–\d+\./,
    );
    await closePage({ view });
  });

  test('says the value in words where the trait runs between two marks, and nothing of an unknown one', async () => {
    const { view } = await open('', { javaScriptEnabled: false });
    const phrase = (taxon: string) => view.locator(`.card[data-of="${taxon}"] .card-phrase`);
    expect(await phrase('limnorhina-fracta').innerText()).toMatch(
      /^at least .+ of the way from the snout tip to/,
    );
    expect(await phrase('calamorhina-vivax').innerText()).toMatch(/^beyond the front of the eye socket/);
    expect(await phrase('ossorhina-obscura').count()).toBe(0);
    await closePage({ view });
  });
});

test('all scripts that the page can load are under 35 KB with gzip', async () => {
  const folder = join(inject('siteFolder'), '_astro');
  const page = await readFile(join(inject('siteFolder'), 'reed-trunks', 'index.html'), 'utf8');
  const files = (await readdir(folder)).filter((file) => file.endsWith('.js'));
  const texts = new Map(
    await Promise.all(files.map(async (file) => [file, await readFile(join(folder, file), 'utf8')] as const)),
  );
  const loaded = new Set<string>();
  const load = (text: string) => {
    for (const file of files.filter((each) => !loaded.has(each) && text.includes(each))) {
      loaded.add(file);
      load(texts.get(file)!);
    }
  };
  load(page);
  expect(loaded.size).toBeGreaterThan(2);
  const bytes = [...loaded].reduce((sum, file) => sum + gzipSync(texts.get(file)!).length, 0);
  expect(bytes).toBeLessThan(35 * 1024);
});
