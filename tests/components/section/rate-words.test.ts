import { expect, test } from 'vitest';
import { lineageView } from '../../../components/lineage/view.ts';
import { findMovedWords, movedRange } from '../../../components/section/moved-words.ts';
import { rateRows, slopeWords } from '../../../components/section/rate-words.ts';
import { findSectionView, type SectionView } from '../../../components/section/section-view.ts';
import { ratesCsv } from '../../../components/data/section-csv.ts';
import type { CompiledSection } from '../../../scripts/compile/contract.ts';
import { compileSection } from '../../scripts/fixtures/small-section.ts';

const { compiled } = await compileSection();
const section = compiled!.section!;
const rates = section.rates!;
function shownWith(changes: Partial<CompiledSection> = {}, language = 'en'): SectionView {
  return findSectionView(lineageView({ ...compiled!, section: { ...section, ...changes } }, language))!;
}
const still = { middle: -1.02, range: [-1.2, -0.8] as [number, number] };

test('a slope is said with what chance alone gives, and whether it lies inside that', () => {
  const inside = slopeWords({ ...rates, line: { slope: -0.9, intercept: 0 }, still }, shownWith()).join(' ');
  expect(inside).toContain('by a slope of −0.90');
  expect(inside).toContain('Chance alone gives a slope near −1');
  expect(inside).toContain('−1.02 (95%: −1.20 to −0.80)');
  expect(inside).toContain('no change that chance would not');
  const outside = slopeWords({ ...rates, line: { slope: -0.4, intercept: 0 }, still }, shownWith()).join(' ');
  expect(outside).toContain('beyond the errors of the means');
});

test('a walk is told only where the best walk takes steps, and nothing is printed as minus nought', () => {
  const walk = { middle: -0.6, range: [-1, -0.001] as [number, number] };
  const words = (changed: Partial<typeof rates>) =>
    slopeWords({ ...rates, ...changed }, shownWith()).join(' ');
  expect(words({ walk: null })).not.toContain('A walk without direction');
  expect(words({ walk })).toContain('−0.60 (95%: −1.00 to 0.00)');
});

test('rows of rates keep their times, two digits a number', () => {
  const row = { fromMyr: 0.05, toMyr: 0.1, pairs: 3, middle: 0.3333, least: 0.04321, greatest: 12.34 };
  expect(rateRows({ ...rates, classes: [row] }, shownWith())).toEqual([
    { time: '0.05–0.1', pairs: '3', middle: '0.33', extent: '0.043–12' },
  ]);
  expect(rateRows({ ...rates, classes: [row] }, shownWith({}, 'es'))[0]!.middle).toBe('0,33');
});

test('classes hold every pair once, each inside its own ends', () => {
  expect(rates.classes.reduce((sum, { pairs }) => sum + pairs, 0)).toBe(rates.pairs.length);
  for (const { fromMyr, toMyr, middle, least, greatest } of rates.classes) {
    const own = rates.pairs.filter(({ intervalMyr }) => intervalMyr >= fromMyr && intervalMyr < toMyr);
    expect(Math.min(...own.map(({ darwins }) => darwins))).toBe(least);
    expect(Math.max(...own.map(({ darwins }) => darwins))).toBe(greatest);
    expect(middle).toBeGreaterThanOrEqual(least);
    expect(middle).toBeLessThanOrEqual(greatest);
  }
});

test('what other dates do is said as a range beside the weight, and never without how many sets of dates', () => {
  const best = [...section.models.joint].sort((a, b) => b.weight! - a.weight!)[0]!;
  const weights = (leads: number, named: number) =>
    section.models.joint.map(({ name }) => ({
      name,
      least: 0.381,
      greatest: 0.523,
      leads: name === best.name ? leads : 200 - leads,
      named: name === best.name ? named : 0,
    }));
  const said = (leads: number, named: number) =>
    findMovedWords(shownWith({ moved: { sets: 200, weights: weights(leads, named) } }))!;
  expect(said(187, 0)).toContain('(200 sets of dates)');
  expect(said(187, 0)).toContain('runs from 38% to 52%. It is the best of the three in 187 of them.');
  expect(said(200, 0)).toContain('in all of them');
  expect(said(200, 0)).not.toContain('to be named');
  expect(said(200, 12)).toContain('In 12 of them a model would have the 90%');
  expect(movedRange(weights(1, 1)[0]!, shownWith())).toBe('38–52%');
  expect(findMovedWords(shownWith({ moved: null }))).toBeUndefined();
});

test('the file of rates has a row a pair with its time, and a header alone without rates', () => {
  const rows = (text: string) => text.trim().split('\r\n');
  expect(rows(ratesCsv(compiled!))).toHaveLength(1 + rates.pairs.length);
  expect(rows(ratesCsv({ ...compiled!, section: { ...section, rates: null } }))).toHaveLength(1);
});

test.each(['en', 'es', 'ar'])('no sentence leaves a place open in %s', (language) => {
  const shown = shownWith({}, language);
  for (const sentence of [...slopeWords(rates, shown), findMovedWords(shown)!])
    expect(sentence).not.toMatch(/[{}]|undefined|NaN/);
});
