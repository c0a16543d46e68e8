import { expect, test } from 'vitest';
import { findRankWords, rateWords } from '../../../components/section/change-words.ts';
import { firstLevel } from '../../../components/section/first-level.ts';
import {
  averagingWords,
  modelNumbers,
  verdictWords,
  weightPercent,
} from '../../../components/section/model-words.ts';
import {
  findLevelAge,
  findSectionView,
  isSectionOnly,
  levelMean,
  levelName,
  type SectionView,
} from '../../../components/section/section-view.ts';
import { individualsCsv, levelsCsv } from '../../../components/data/section-csv.ts';
import { cardCounts } from '../../../components/figures/small-plate/card-counts.ts';
import { lineageView } from '../../../components/lineage/view.ts';
import { voiceOf } from '../../../components/messages/say.ts';
import type { CompiledLineage, CompiledSection } from '../../../scripts/compile/contract.ts';
import { compileSection } from '../../scripts/fixtures/small-section.ts';

const { compiled } = await compileSection({
  'section.yaml': (text) => `${text}generation: { years: 4, source: hopper-notes }\n`,
});
const lineage = compiled!;

function shownWith(changes: Partial<CompiledSection> = {}, language = 'en'): SectionView {
  const changed: CompiledLineage = { ...lineage, section: { ...lineage.section!, ...changes } };
  return findSectionView(lineageView(changed, language))!;
}

test('levels are counted from the base, beds without individuals left out', () => {
  const shown = shownWith();
  expect(shown.levels.map(({ id }) => levelName(shown, id))).toEqual(
    [1, 2, 3, 4, 5].map((n) => `Level ${n}`),
  );
  expect(() => levelName(shown, 'foot')).toThrow('unknown level: "foot"');
});

test('a mean is rounded to its error, and a level without one is not known', () => {
  const shown = shownWith();
  const level = { ...shown.levels[0]!, estimate: 10.234, interval: [10.04, 10.44] as [number, number] };
  expect(levelMean(shown, level)).toBe('10.2 ± 0.2');
  expect(levelMean(shown, { ...level, estimate: null, interval: [null, null] })).toBe('not known');
  expect(findLevelAge(shown, { ...level, ageMa: null })).toBeUndefined();
});

test('the default is that one cannot tell, with the reason and the best model’s weight', () => {
  const said = verdictWords(shownWith());
  expect(said).toMatch(
    /^Row: one cannot tell how it moved\. The best of three models, the .*, has \d+% of the weight/,
  );
  const undated = { ...lineage.section!.verdict, reason: 'no-ages' };
  expect(verdictWords(shownWith({ verdict: undated }))).toContain('Fewer than two beds are dated');
});

test('a model that is named is named with its weight', () => {
  const verdict = { ...lineage.section!.verdict, code: 'rises' as const, reason: null, weight: 0.953 };
  expect(verdictWords(shownWith({ verdict }))).toContain('95%');
});

test('a weight is never printed as nothing or as all', () => {
  const voice = voiceOf('en');
  expect([0.004, 0.1772, 0.999, null].map((weight) => weightPercent(weight, voice))).toEqual([
    '< 1%',
    '18%',
    '> 99%',
    '–',
  ]);
});

test('a variance on its bound is told as a bound and not as a number', () => {
  const shown = shownWith();
  const model = { ...shown.section.models.joint[0]!, variance: 0, varianceOnBound: true };
  expect(modelNumbers(model, shown).join(' ')).toContain('the edge of what is possible');
});

test('numbers of models are shares on a log scale and millimetres on a plain one', () => {
  const directed = {
    variance: 0.01,
    varianceLimits: [0.0025, 0.04] as [number, number],
    varianceOnBound: false,
  };
  const model = {
    ...lineage.section!.models.joint.find(({ name }) => name === 'directional-walk')!,
    ...directed,
    meanStep: Math.log(1.05),
    meanStepLimits: [Math.log(0.9), Math.log(1.2)] as [number, number],
  };
  expect(modelNumbers(model, shownWith())[0]).toContain('+5% [−10% to +20%]');
  expect(modelNumbers(model, shownWith({ scale: 'plain' }))[1]).toContain('0.10 mm [0.05 mm–0.20 mm]');
});

test('rates stand with their interval, and rates a generation with the source of the generation', () => {
  const [rate, generations] = rateWords(shownWith());
  // 85% of the time between the beds, whose dates have sds of 2/sqrt(12) and 0.1: 0.85 · 0.586 · 1.96
  expect(rate).toMatch(/^From Level 1 to Level 5, over 3\.83 ± 0\.98 million years: .* darwins/);
  expect(generations).toMatch(
    /^With a generation of 4\.0 years \(Hopper & Heath 2020\): .* × 10⁻[⁰¹²³⁴⁵⁶⁷⁸⁹]+ haldanes/,
  );
  expect(rateWords(shownWith({ change: null }))).toEqual([]);
  expect(findRankWords(shownWith({ ranks: null }))).toBeUndefined();
  expect(findRankWords(shownWith())).toContain('decide nothing');
});

test('a page opens with the first level that its story asks for, else with the lowest that has a mean', () => {
  const { levels } = shownWith();
  expect(firstLevel('<Step focus="nowhere">…</Step><Step focus="three one">', levels)).toBe('three');
  expect(firstLevel('', levels)).toBe('one');
  expect(firstLevel('', [])).toBe('');
});

test('tables to take away have a row for each level and each individual', () => {
  const rows = (text: string) => text.trim().split('\r\n');
  expect(rows(levelsCsv(lineage))).toHaveLength(1 + 7);
  const individuals = rows(individualsCsv(lineage));
  expect(individuals).toHaveLength(1 + 20);
  expect(individuals.filter((row) => row.endsWith(',true'))).toHaveLength(5);
  expect(
    individuals.every((row, index) => index === 0 || row.startsWith('hill-hoppers,true,shelf-bank,')),
  ).toBe(true);
});

test('a lineage with a tree is no section alone, and one without a tree counts its crowns', () => {
  expect(isSectionOnly(lineage)).toBe(false);
  const alone = { ...lineage, trees: [] };
  expect(isSectionOnly(alone)).toBe(true);
  expect(cardCounts(alone, voiceOf('en')).map(({ status, text }) => [status, text])).toEqual([
    ['measured', '15 measured whole'],
    ['bounded', '5 worn: at least'],
  ]);
});

test('levels that all gathered over one time are said so once', () => {
  const voice = voiceOf('en');
  expect(averagingWords(2000, 2000, voice)).toContain('lived 2000 years apart');
  expect(averagingWords(3000, 12000, voice)).toContain('lived 3000 to 12000 years apart');
});
