import { expect, test } from 'vitest';
import { changeAddress } from '../../../components/evidence/address.ts';
import type { LineageView } from '../../../components/lineage/view.ts';

/** As much of a view as an address needs: its lineage, its language, and a trait of so many animals. */
function viewOf(animals: number, language: string): LineageView {
  const values = Array.from({ length: animals }, () => ({}));
  const lineage = { lineage: 'hill-hoppers', about: { languages: ['en', 'es'] } };
  return { lineage, language, trait: { id: 'muzzle-share', values } } as unknown as LineageView;
}

test('a card on the explainer leads to the change of its trait on the same page', () => {
  expect(changeAddress(viewOf(24, 'es'))).toBe('#change-muzzle-share');
});

test('a card on a page of its own leads back to the explainer, in its own language', () => {
  expect(changeAddress(viewOf(61, 'en'))).toMatch(/\/hill-hoppers\/#change-muzzle-share$/);
  expect(changeAddress(viewOf(61, 'es'))).toMatch(/\/hill-hoppers\/es\/#change-muzzle-share$/);
});
