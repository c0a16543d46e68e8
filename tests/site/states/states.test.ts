import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from '../open-page.ts';
import { faultsOf } from './faults.ts';
import { allPairs, pairsOf } from './pairs.ts';
import { choices, isPossible, sizes, states } from './table.ts';
import { visit } from './visit.ts';

useBrowser();

const site = inject('siteUrl');

test('the table of states holds every pair of values that can meet, in at most 120 runs', () => {
  const held = new Set(states.flatMap(pairsOf));
  expect([...allPairs(choices, isPossible)].filter((pair) => !held.has(pair))).toEqual([]);
  expect(states.length).toBeLessThanOrEqual(120);
});

describe('an outside checker (axe-core, WCAG 2.2 A and AA) and the browser find no fault', () => {
  test.each(states)('on $page, $theme, $size, $state, $language', async (state) => {
    expect(await faultsOf(site, state)).toEqual([]);
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
