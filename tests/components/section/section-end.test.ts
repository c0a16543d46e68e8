import { expect, test } from 'vitest';
import { lineageView } from '../../../components/lineage/view.ts';
import { sectionGaps, sectionMinds } from '../../../components/section/section-end.ts';
import { findSectionView } from '../../../components/section/section-view.ts';
import { compileSection } from '../../scripts/fixtures/small-section.ts';

const { compiled } = await compileSection();
const shown = findSectionView(lineageView(compiled!, 'en'))!;

test('what would change our minds asks for levels where one cannot tell, and for another section where one can', () => {
  expect(sectionMinds(shown)[0]).toContain('More levels');
  const verdict = { ...shown.section.verdict, code: 'rises' as const };
  const told = sectionMinds({ ...shown, section: { ...shown.section, verdict } });
  expect(told[0]).toContain('went another way');
});

test('dated beds and worn crowns are counted, and nothing is said of worn crowns where there are none', () => {
  const said = sectionMinds(shown).join('\n');
  expect(said).toContain('2 beds are dated');
  expect(said).toContain('5 are worn');
  const individuals = shown.section.individuals.map((each) => ({ ...each, atLeast: false }));
  expect(sectionMinds({ ...shown, section: { ...shown.section, individuals } }).join()).not.toContain('worn');
});

test('the gap with most rock between two levels is named with its thickness', () => {
  const heights = [0, 1, 4, 5, 6];
  const levels = shown.levels.map((level, index) => ({ ...level, heightM: heights[index]! }));
  expect(sectionGaps({ ...shown, levels }).join('\n')).toContain('between Level 2 and Level 3: 3.0 m');
});

test.each(['en', 'es', 'ar'])('no sentence leaves a place open in %s', (language) => {
  const there = findSectionView(lineageView(compiled!, language))!;
  for (const sentence of [...sectionMinds(there), ...sectionGaps(there)])
    expect(sentence).not.toMatch(/[{}]|undefined/);
});
