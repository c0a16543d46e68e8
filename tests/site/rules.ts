import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright';

/** The tags of axe-core for levels A and AA of WCAG 2.0, 2.1 and 2.2. */
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What is looked at, by a selector, and by which rules: WCAG A and AA, or all that the checker has, its advice too. */
interface Question {
  readonly within?: string | undefined;
  readonly without?: string | undefined;
  readonly rules?: 'wcag' | 'all';
}

/**
 * The rules that an outside checker (axe-core 4.14) finds broken on a page, each with the places; empty where none is. Only
 * what is broken is asked for, and in the page itself, which has no frames: to describe ten thousand places that are in
 * order, and to carry them from page to page, takes longer than to check them.
 */
export async function rulesBroken(
  view: Page,
  { within, without, rules = 'wcag' }: Question = {},
): Promise<string[]> {
  if ((await view.locator('iframe, frame').count()) > 0) throw new Error('the checker looks into no frame');
  const axe = new AxeBuilder({ page: view }).setLegacyMode(true).options({ resultTypes: ['violations'] });
  if (within !== undefined) axe.include(within);
  if (without !== undefined) axe.exclude(without);
  if (rules === 'wcag') axe.withTags(levels);
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(' ')}`);
}
