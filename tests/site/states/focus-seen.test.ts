import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from '../open-page.ts';
import { visit } from '../visit.ts';
import { sizes } from './table.ts';

useBrowser();
const site = inject('siteUrl');

/** Whether some part of the element that holds the keyboard can be seen: points of its first box, where that is on the screen. */
function isFocusSeen(): string {
  const focused = document.activeElement;
  if (!focused || focused === document.body) return 'left';
  const box = [...focused.getClientRects()].find((each) => each.width > 0) ?? focused.getBoundingClientRect();
  const [left, top] = [Math.max(box.left, 0), Math.max(box.top, 0)];
  const [right, bottom] = [Math.min(box.right, innerWidth), Math.min(box.bottom, innerHeight)];
  const shares = [0.02, 0.25, 0.5, 0.75, 0.98];
  const isSeen = shares.some((across) =>
    shares.some((down) => {
      const above = document.elementFromPoint(left + across * (right - left), top + down * (bottom - top));
      return above !== null && (focused.contains(above) || above.contains(focused));
    }),
  );
  if (right > left && bottom > top && isSeen) return 'seen';
  return `${focused.className} “${focused.textContent.trim().slice(0, 30)}” at ${box.left} ${box.top} ${box.right} ${box.bottom}`;
}

/** Presses Tab through the page and names each stop of which nothing can be seen (WCAG 2.2, 2.4.11). */
async function hiddenStops(view: Page): Promise<{ stops: number; hidden: string[] }> {
  const hidden: string[] = [];
  for (let stops = 0; stops < 400; stops++) {
    await view.keyboard.press('Tab');
    const seen = await view.evaluate(isFocusSeen);
    if (seen === 'left') return { stops, hidden };
    if (seen !== 'seen') hidden.push(seen);
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
