import sharp from 'sharp';
import { describe, expect, inject, test } from 'vitest';
import { overflowOf, screens, useBrowser } from './open-page.ts';
import { rulesBroken } from './rules.ts';
import { visit } from './visit.ts';

const site = inject('siteUrl');
const lineage = `${site}reed-trunks/`;
useBrowser();

describe.each(screens)('the shelf of lineages on a $name', (size) => {
  test.each([true, false])('shows each lineage with its own figure and counts, script %s', async (script) => {
    const options = { viewport: size, javaScriptEnabled: script };
    await visit(site, options, async ({ view, faults }) => {
      expect(await view.locator('.lineage-card').count()).toBe(2);
      const card = view.locator('.lineage-card:has(a[href$="/reed-trunks/"])');
      expect(await card.locator('.small-plate .layer-marks[data-of]').count()).toBeGreaterThanOrEqual(24);
      expect((await card.locator('.small-plate').boundingBox())!.width).toBeGreaterThan(250);
      const counted = (await card.locator('.lineage-counts li').allInnerTexts()).map((text) =>
        Number(/\d+/.exec(text)?.[0]),
      );
      expect(counted.reduce((sum, count) => sum + count, 0)).toBe(24);
      expect(await card.getByText('Invented for teaching').isVisible()).toBe(true);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      expect(faults).toEqual([]);
    });
  });

  test('opens the lineage from anywhere on its card, and each language from its link', async () => {
    await visit(site, { viewport: size }, async ({ view }) => {
      const card = view.locator('.lineage-card:has(a[href$="/reed-trunks/"])');
      await card.scrollIntoViewIfNeeded();
      const figure = (await card.locator('.lineage-figure').boundingBox())!;
      await view.mouse.click(figure.x + 30, figure.y + 30);
      await view.waitForURL(lineage);
      await view.goBack();
      await card.locator('.lineage-languages a[hreflang="es"]').click();
      await view.waitForURL(`${lineage}es/`);
    });
  });
});

describe('the shelf in other languages', () => {
  test.each([
    ['es', 'ltr', 'reed-trunks/es/'],
    ['ar', 'rtl', 'reed-trunks/'],
  ])('in %s runs %s, and its card leads to %s', async (language, direction, target) => {
    await visit(`${site}lineages/${language}/`, {}, async ({ view, faults }) => {
      expect(await view.locator('html').getAttribute('lang')).toBe(language);
      expect(await view.locator('html').getAttribute('dir')).toBe(direction);
      const links = await view
        .locator('.lineage-card h2 a')
        .evaluateAll((all) => all.map((each) => (each as HTMLAnchorElement).href));
      expect(links).toContain(`${site}${target}`);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      await view.locator('.languages a[hreflang="en"]').click();
      await view.waitForURL(site);
      expect(faults).toEqual([]);
    });
  });

  test('is where the way home of a Spanish page leads', async () => {
    await visit(`${site}reed-trunks/es/`, {}, async ({ view }) => {
      await view.locator('.home').click();
      await view.waitForURL(`${site}lineages/es/`);
    });
  });
});

describe('a page that is not here', () => {
  test.each(['nowhere/', 'reed-trunks/nowhere/at/all'])(
    'at %s says so and shows the way home',
    async (path) => {
      await visit(`${site}${path}`, {}, async ({ view }) => {
        expect(await view.locator('h1').innerText()).toBe('This page is not here');
        await view.locator('.way-home a').click();
        await view.waitForURL(site);
        expect(await view.locator('.lineage-card').count()).toBe(2);
      });
    },
  );

  test('is drawn in the look of the site', async () => {
    await visit(`${site}nowhere`, {}, async ({ view }) => {
      const ground = () => view.locator('html').evaluate((root) => getComputedStyle(root).backgroundColor);
      const face = () => view.locator('h1').evaluate((title) => getComputedStyle(title).fontFamily);
      const missing = [await ground(), await face()];
      await view.goto(site);
      expect(missing).toEqual([await ground(), await face()]);
    });
  });
});

test.each(['en', 'es'])('the shared picture in %s is there under the base path', async (language) => {
  const answer = await fetch(`${site}og/reed-trunks.${language}.png`);
  expect(answer.headers.get('content-type')).toBe('image/png');
  const { width, height } = await sharp(Buffer.from(await answer.arrayBuffer())).metadata();
  expect({ width, height }).toEqual({ width: 1200, height: 630 });
});

describe('accessibility by an outside checker', () => {
  const states = [
    { page: 'shelf', address: site, night: false, width: 390 },
    { page: 'shelf', address: site, night: true, width: 1440 },
    { page: 'missing page', address: `${site}nowhere`, night: true, width: 390 },
    { page: 'missing page', address: `${site}nowhere`, night: false, width: 1440 },
    { page: 'tree', address: lineage, night: false, width: 390 },
    { page: 'tree', address: lineage, night: true, width: 1440 },
  ];
  test.each(states)(
    'finds no fault on the $page at $width, night $night',
    async ({ page, address, night, width }) => {
      const colorScheme = night ? 'dark' : 'light';
      await visit(address, { viewport: { width, height: 900 }, colorScheme }, async ({ view }) => {
        const isTree = page === 'tree';
        if (isTree) await view.locator('.kin-list summary').first().click();
        expect(await rulesBroken(view, { within: isTree ? '.relatives' : undefined })).toEqual([]);
      });
    },
  );
});
