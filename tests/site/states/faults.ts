import { overflowOf } from '../open-page.ts';
import { rulesBroken } from '../rules.ts';
import { addressOf, enter } from './enter.ts';
import type { Case } from './pairs.ts';
import { sizeOf } from './table.ts';
import { visit } from '../visit.ts';

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
      found.push(...(await rulesBroken(view)));
      const overflow = await overflowOf(view);
      if (overflow > 0) found.push(`the page is ${overflow} px wider than the screen`);
      // A browser reports a missing address as an error of its own; that page is what is asked for here.
      found.push(...faults.filter((fault) => state['page'] !== 'missing' || !/status of 404/.test(fault)));
    },
  );
  return found;
}
