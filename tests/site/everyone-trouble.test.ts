import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from './open-page.ts';
import { visit } from './visit.ts';

useBrowser();
const explainer = `${inject('siteUrl')}reed-trunks/`;
const desktop = { width: 1440, height: 900 };

describe('on the page that comes with the tool', () => {
  test('blocked storage costs nothing but the memory of the room', async () => {
    await visit('about:blank', {}, async ({ view }) => {
      await view.addInitScript(() => {
        Object.defineProperty(window, 'localStorage', {
          get: () => {
            throw new DOMException('storage is blocked', 'SecurityError');
          },
        });
      });
      const errors: string[] = [];
      view.on('pageerror', (error) => errors.push(error.message));
      await view.goto(explainer, { waitUntil: 'load' });
      const ground = () => view.locator('html').evaluate((root) => getComputedStyle(root).backgroundColor);
      const before = await ground();
      await view.locator('theme-choice select').selectOption('night');
      expect(await ground()).not.toBe(before);
      expect(errors).toEqual([]);
    });
  });

  test.each(['evidence-cards', 'lineage-plate'])(
    'a script that stops halfway, at %s, leaves every word, value and card to be read',
    async (stopped) => {
      await visit('about:blank', { viewport: desktop }, async ({ view }) => {
        await view.addInitScript((name) => {
          const define = customElements.define.bind(customElements);
          customElements.define = (tag, ...rest) => {
            if (tag === name) throw new Error(`${name} stopped`);
            define(tag, ...rest);
          };
        }, stopped);
        await view.goto(explainer, { waitUntil: 'load' });
        expect(await view.locator('.step').count()).toBe(9);
        expect(await view.locator('.caption:visible').count()).toBe(1);
        expect(await view.locator('.plate:visible .layer-focus.in-focus').count()).toBeGreaterThan(0);
        const link = view.locator('#values .values td a').first();
        const target = (await link.getAttribute('href'))!;
        await link.click();
        await expect
          .poll(() =>
            view
              .locator(target)
              .boundingBox()
              .then((box) => box!.y < 900),
          )
          .toBe(true);
      });
    },
  );

  test('pictures of skulls that cannot be had are left out, and their values stand', async () => {
    await visit('about:blank', { viewport: desktop }, async ({ view }) => {
      await view.route('**/skulls/**', (route) => route.abort());
      await view.goto(explainer, { waitUntil: 'load' });
      await view.locator('[data-walk="-1"]').click();
      const caption = view.locator('.caption:visible');
      expect(await caption.locator('.caption-value').innerText()).toMatch(/\d|not known/);
      expect(await view.locator('.plate:visible .flag-value').count()).toBeGreaterThan(0);
    });
  });
});
