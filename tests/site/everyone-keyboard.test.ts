import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from './open-page.ts';
import { readStep, visit } from './visit.ts';

useBrowser();
const explainer = `${inject('siteUrl')}reed-trunks/`;
const viewport = { width: 1440, height: 900 };
const focused = (view: Page) =>
  view.evaluate(() => {
    const { className, textContent, tagName } = document.activeElement as HTMLElement;
    return `${tagName.toLowerCase()} ${className} ${textContent.trim().replace(/\s+/g, ' ')}`;
  });

/** Whether nothing lies over the middle of an element. */
function isOnTop(element: Element): boolean {
  const { left, right, top, bottom } = element.getBoundingClientRect();
  return document.elementFromPoint((left + right) / 2, (top + bottom) / 2) === element;
}

async function tabTo(view: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 300; presses++) {
    await view.keyboard.press('Tab');
    if (await view.evaluate((wanted) => document.activeElement!.matches(wanted), selector)) return;
  }
  throw new Error(`300 presses of Tab do not reach ${selector}`);
}

describe('by keyboard alone', () => {
  test('the first stop skips to the story', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await view.keyboard.press('Tab');
      expect(await focused(view)).toMatch(/^a skip/);
      expect((await view.locator('.skip').boundingBox())!.y).toBeGreaterThanOrEqual(0);
      await view.keyboard.press('Enter');
      await view.keyboard.press('Tab');
      const inStory = await view.evaluate(() => document.activeElement!.closest('#story') !== null);
      expect(inStory).toBe(true);
    });
  });

  test('a value opens its card, Tab goes on inside it, Esc closes it and gives the focus back', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await tabTo(view, '.step .value');
      const value = await focused(view);
      await view.keyboard.press('Enter');
      await expect.poll(() => view.locator('.card.open').count()).toBe(1);
      expect(await focused(view)).toMatch(/^article card/);
      await view.keyboard.press('Tab');
      expect(await view.evaluate(() => document.activeElement!.closest('.card.open') !== null)).toBe(true);
      await view.keyboard.press('Escape');
      await expect.poll(() => view.locator('.card.open').count()).toBe(0);
      expect(await focused(view)).toBe(value);
    });
  });

  test('a step comes into view and the figure follows when its value takes the focus', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await tabTo(view, '.step[data-focus^="limnorhina-fracta"] .value');
      await expect
        .poll(() => view.locator('.caption:visible').getAttribute('data-of'))
        .toBe('limnorhina-fracta');
    });
  });

  test('the walk goes to the next animal by age and says so, and back again, out of the list of the last step too', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      const inFocus = () => view.locator('.caption:not([hidden])').getAttribute('data-of');
      await tabTo(view, '.step[data-show="table"] .value');
      await expect.poll(() => view.locator('lineage-plate').getAttribute('data-show')).toBe('table');
      await tabTo(view, '[data-walk="-1"]');
      expect(await view.locator('[data-walk="-1"]').evaluate(isOnTop)).toBe(true);
      const before = await inFocus();
      await view.keyboard.press('Enter');
      const caption = view.locator('.caption:visible');
      expect(await caption.getAttribute('data-of')).not.toBe(before);
      expect(await view.locator('.captions [role="status"]').textContent()).toBe(
        await caption.getAttribute('data-spoken'),
      );
      await view.keyboard.press('Tab');
      await view.keyboard.press('Space');
      expect(await inFocus()).toBe(before);
    });
  });

  test('the room is changed, kept for the next page, and given back to the device', async () => {
    await visit(explainer, { viewport, colorScheme: 'light' }, async ({ view }) => {
      const ground = () => view.locator('html').evaluate((root) => getComputedStyle(root).backgroundColor);
      const paper = await ground();
      await tabTo(view, 'theme-choice select');
      await view.keyboard.press('End');
      await expect.poll(ground).not.toBe(paper);
      await view.reload();
      expect(await ground()).not.toBe(paper);
      await tabTo(view, 'theme-choice select');
      await view.keyboard.press('Home');
      await expect.poll(ground).toBe(paper);
    });
  });

  test('no single letter does anything of its own (WCAG 2.2, 2.1.4)', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await readStep(view, '.step[data-step="2"]');
      const before = await view.evaluate(() => [scrollY, location.hash, document.activeElement!.tagName]);
      for (const letter of 'abcdefghijklmnopqrstuvwxyz') await view.keyboard.press(letter);
      expect(await view.evaluate(() => [scrollY, location.hash, document.activeElement!.tagName])).toEqual(
        before,
      );
    });
  });

  test('the whole page is gone through in the order of its parts, once each', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      const parts: string[] = [];
      for (let presses = 0; presses < 400; presses++) {
        await view.keyboard.press('Tab');
        const part = await view.evaluate(() => {
          const at = document.activeElement!;
          if (at === document.body) return 'end';
          const places = [
            '.skip',
            '.masthead',
            '#story',
            '.figure',
            '.relatives',
            '#values',
            '#evidence',
            '#sources',
            '#glossary',
          ];
          return places.find((place) => at.closest(place)) ?? 'other';
        });
        if (part === 'end') break;
        if (part !== parts.at(-1)) parts.push(part);
      }
      const wanted = ['.skip', '.masthead', '#story', '.figure', '.relatives', '#values', '#evidence'];
      expect(parts.filter((part) => wanted.includes(part))).toEqual(wanted);
    });
  });
});
