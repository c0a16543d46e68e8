import { expect, test } from 'vitest';
import { changeAddress } from '../../../components/evidence/address.ts';
import type { LineageView } from '../../../components/lineage/view.ts';

/** As much of a view as an address needs: its lineage, its language, and a trait of so many animals. */
function viewOf(animals: number, language: string): LineageView {
  const values = Array.from({ length: animals }, () => ({}));
  const lineage = { lineage: 'hill-hoppers', about: { languages: ['en', 'es'] } };
  return { lineage, language, trait: { id: 'muzzle-share', values } } as unknown as LineageView;
}

test('a card leads to the change of its trait, in its own language, wherever it stands', () => {
  expect(changeAddress(viewOf(24, 'en'))).toMatch(/\/hill-hoppers\/parts\/change\/#change-muzzle-share$/);
  expect(changeAddress(viewOf(61, 'es'))).toMatch(/\/hill-hoppers\/es\/parts\/change\/#change-muzzle-share$/);
});
