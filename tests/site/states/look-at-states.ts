import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from '../open-page.ts';
import { faultsOf } from './faults.ts';
import { choices, states } from './table.ts';

/** Tests every state of the table in one light. A light is a file of tests, so that two browsers can look at once. */
export function lookAtStates(theme: (typeof choices.theme)[number]): void {
  useBrowser();
  const site = inject('siteUrl');

  describe('an outside checker (axe-core, WCAG 2.2 A and AA) and the browser find no fault', () => {
    test.each(states.filter((state) => state['theme'] === theme))(
      'on $page, $theme, $size, $state, $language',
      async (state) => {
        expect(await faultsOf(site, state)).toEqual([]);
      },
    );
  });
}
