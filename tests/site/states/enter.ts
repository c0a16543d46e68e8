import type { Page } from 'playwright';
import { expect } from 'vitest';
import type { Case } from './pairs.ts';
import { readStep } from '../visit.ts';

/** The address of a page of the table under the address of a site. */
export function addressOf(site: string, { page, language }: Case): string {
  const tag = language === 'en' ? '' : `${language}/`;
  const addresses: Record<string, string> = {
    explainer: `reed-trunks/${tag}`,
    section: `loam-delvers/${tag}`,
    records: `reed-trunks/${tag}data/`,
    index: tag === '' ? '' : `lineages/${tag}`,
    bench: `bench/${tag}`,
    part: `reed-trunks/${tag}parts/change/`,
    methods: `methods/${tag}`,
    missing: 'nowhere/at/all',
    'card-apart': 'two-hundred/evidence/taxon-3/',
  };
  const found = addresses[String(page)];
  if (found === undefined) throw new Error(`unknown page "${page}"`);
  return site + found;
}

/** Brings an open page into a state of the table, and waits until it is there. */
export async function enter(view: Page, state: string): Promise<void> {
  await ways[state]!(view);
}

const ways: Record<string, (view: Page) => Promise<void>> = {
  opening: () => Promise.resolve(),
  step: async (view) => {
    await readStep(view, '.step[data-step="4"]');
    await expect.poll(() => view.locator('.step[data-step="4"].current').count()).toBe(1);
  },
  slice: async (view) => {
    await readStep(view, '.step[data-show="slice"]');
    await expect.poll(() => view.locator('.plate:visible .layer-slices.in-focus').count()).toBe(1);
  },
  table: async (view) => {
    await readStep(view, '.step[data-show="table"]');
    await expect.poll(() => view.locator('.step[data-show="table"].current').count()).toBe(1);
  },
  trend: async (view) => {
    await readStep(view, '.step[data-show="trend"]');
    await expect.poll(() => view.locator('.step[data-show="trend"].current').count()).toBe(1);
    await expect.poll(() => view.locator('.figure .plate:visible .trend-line').isVisible()).toBe(true);
  },
  card: async (view) => {
    await view.locator('.step .value').first().click();
    await expect.poll(() => view.locator('.card.open').count()).toBe(1);
  },
  cut: async (view) => {
    const count = view.locator('.slice-row:first-child .slice-count');
    const before = await count.innerText();
    await view.locator('.slice').scrollIntoViewIfNeeded();
    await view.locator('.slice-handle').focus();
    await view.keyboard.press('PageUp');
    await expect.poll(() => count.innerText()).not.toBe(before);
  },
  series: async (view) => {
    await view.locator('.series-switch input').last().check();
    await expect.poll(() => view.locator('.series-figure:visible').count()).toBe(1);
  },
  unfolded: async (view) => {
    await view.evaluate(() => document.querySelectorAll('details').forEach((each) => (each.open = true)));
  },
};
