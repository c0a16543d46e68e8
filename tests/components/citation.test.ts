import { expect, test } from 'vitest';
import { citationOf, citationOfPage } from '../../components/evidence/citation.ts';
import { lineageView } from '../../components/lineage/view.ts';
import { risingTips } from './fixtures/hands.ts';
import { inventedLineage } from './fixtures/invented-lineage.ts';

const lineage = inventedLineage(risingTips);
const address = 'https://example.org/hands/#evidence-x';
const cite = (from: typeof lineage) => {
  const view = lineageView(from, 'en');
  const value = view.trait.values.find(({ status }) => status === 'inferred')!;
  return { text: citationOf(view, value, address), view, value };
};

test('a citation of an inferred value keeps its brackets, its edition and its address', () => {
  const { text, view, value } = cite(lineage);
  expect(text).toContain(view.printed(value.taxon).printed);
  expect(text).toMatch(/\[.+\]/);
  expect(text).toContain(`edition ${lineage.about.edition.number} of ${lineage.about.edition.date}`);
  expect(text).toContain(address);
});

test('only invented records are cited as invented', () => {
  expect(cite(lineage).text).toMatch(/\(made-up records\)$/);
  const real = { ...lineage, about: { ...lineage.about, invented: false } };
  expect(cite(real).text.endsWith(address)).toBe(true);
});

test('a page is cited by its title, edition and results, and a value by the same words after its own', () => {
  const { text, view } = cite(lineage);
  const page = citationOfPage(view, address);
  expect(page).toContain(lineage.resultDigest.slice(0, 12));
  expect(text.endsWith(page)).toBe(true);
});
