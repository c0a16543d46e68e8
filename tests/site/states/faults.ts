import AxeBuilder from '@axe-core/playwright';
import { overflowOf } from '../open-page.ts';
import { addressOf, enter } from './enter.ts';
import type { Case } from './pairs.ts';
import { sizeOf } from './table.ts';
import { visit } from './visit.ts';

/** The tags of axe-core for levels A and AA of WCAG 2.0, 2.1 and 2.2. */
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * What an outside checker (axe-core) and the browser find wrong with a page in a state, and whether it is wider than the screen
 * (WCAG 1.4.10). Empty where nothing is wrong.
 */
export async function faultsOf(site: string, state: Case): Promise<string[]> {
  const { width, height } = sizeOf(String(state['size']));
  const colorScheme = state['theme'] === 'night' ? 'dark' : 'light';
  const found: string[] = [];
  await visit(
    addressOf(site, state),
    { viewport: { width, height }, colorScheme },
    async ({ view, faults }) => {
      await enter(view, String(state['state']));
      const { violations } = await new AxeBuilder({ page: view }).withTags(levels).analyze();
      found.push(
        ...violations.map(({ id, nodes }) => `${id}: ${nodes.map((each) => each.target).join(' ')}`),
      );
      const overflow = await overflowOf(view);
      if (overflow > 0) found.push(`the page is ${overflow} px wider than the screen`);
      // A browser reports a missing address as an error of its own; that page is what is asked for here.
      found.push(...faults.filter((fault) => state['page'] !== 'missing' || !/status of 404/.test(fault)));
    },
  );
  return found;
}
