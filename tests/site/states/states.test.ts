import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { allPairs, pairsOf, type Case } from './pairs.ts';
import { choices, isPossible, sizeOf, sizes, states } from './table.ts';
import { overflowOf, useBrowser } from '../open-page.ts';
import { readStep, visit } from './visit.ts';

useBrowser();

/** The tags of axe-core for levels A and AA of WCAG 2.0, 2.1 and 2.2. */
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const site = inject('siteUrl');

function addressOf({ page, language }: Case): string {
  if (page === 'index') return site;
  if (page === 'missing') return `${site}nowhere/at/all`;
  return `${site}reed-trunks/${language === 'es' ? 'es/' : ''}`;
}

async function enter(view: Page, state: string | number): Promise<void> {
  if (state === 'step') {
    await readStep(view, '.step[data-step="4"]');
    await expect.poll(() => view.locator('.step[data-step="4"].current').count()).toBe(1);
  }
  if (state === 'slice') {
    await readStep(view, '.step[data-show="slice"]');
    await expect.poll(() => view.locator('.plate:visible .layer-slices.in-focus').count()).toBe(1);
  }
  if (state === 'card') {
    await view.locator('.step .value').first().click();
    await expect.poll(() => view.locator('.card.open').count()).toBe(1);
  }
}

test('the table of states holds every pair of values that can meet, in at most 60 runs', () => {
  const held = new Set(states.flatMap(pairsOf));
  expect([...allPairs(choices, isPossible)].filter((pair) => !held.has(pair))).toEqual([]);
  expect(states.length).toBeLessThanOrEqual(60);
});

describe('an outside checker (axe-core, WCAG 2.2 A and AA) and the browser find no fault', () => {
  test.each(states)('on $page, $theme, $size, $state, $language', async (state) => {
    const { width, height } = sizeOf(String(state['size']));
    const colorScheme = state['theme'] === 'night' ? 'dark' : 'light';
    await visit(addressOf(state), { viewport: { width, height }, colorScheme }, async ({ view, faults }) => {
      await enter(view, state['state']!);
      const { violations } = await new AxeBuilder({ page: view }).withTags(levels).analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map((each) => each.target).join(' ')}`),
      ).toEqual([]);
      expect(await overflowOf(view), 'the page is no wider than the screen (WCAG 1.4.10)').toBe(0);
      // A browser reports a missing address as an error of its own; that page is what is asked for here.
      const own = faults.filter((fault) => state['page'] !== 'missing' || !/status of 404/.test(fault));
      expect(own).toEqual([]);
    });
  });
});

/** Presses Tab through the page and names each stop that no corner or middle of which can be seen (WCAG 2.4.11). */
async function hiddenStops(view: Page): Promise<{ stops: number; hidden: string[] }> {
  const hidden: string[] = [];
  for (let stops = 0; stops < 400; stops++) {
    await view.keyboard.press('Tab');
    const seen = await view.evaluate(() => {
      const focused = document.activeElement;
      if (!focused || focused === document.body) return 'left';
      const box =
        [...focused.getClientRects()].find((each) => each.width > 0) ?? focused.getBoundingClientRect();
      const [inset, right, bottom] = [1, box.right - 1, box.bottom - 1];
      const points = [
        [box.left + box.width / 2, box.top + box.height / 2],
        [box.left + inset, box.top + inset],
        [right, box.top + inset],
        [box.left + inset, bottom],
        [right, bottom],
      ];
      const shown = points.some(([x, y]) => {
        const top = document.elementFromPoint(x!, y!);
        return top !== null && (focused.contains(top) || top.contains(focused));
      });
      return shown ? 'shown' : `${focused.className} ${focused.textContent.trim().slice(0, 30)}`;
    });
    if (seen === 'left') return { stops, hidden };
    if (seen !== 'shown') hidden.push(seen);
  }
  throw new Error('the keyboard does not come to the end of the page in 400 steps');
}

describe('focus is never wholly hidden while tabbing through the page', () => {
  test.each(sizes)('at $name', async ({ width, height }) => {
    await visit(`${site}reed-trunks/`, { viewport: { width, height } }, async ({ view }) => {
      const { stops, hidden } = await hiddenStops(view);
      expect(stops).toBeGreaterThan(60);
      expect(hidden).toEqual([]);
    });
  });
});
