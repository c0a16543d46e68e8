import { expect, test } from 'vitest';
import { studentQuantile } from '../../analysis/statistics/index.ts';
import { referenceSections, type ReferenceSection } from '../reference/section-levels.ts';
import { added, replaced } from './fixtures/changed-lineage.ts';
import { compileSection } from './fixtures/small-section.ts';

/** Individuals with exactly the mean and variance that a level of the reference has: pairs about the mean. */
function individualsOf(mean: number, variance: number, n: number): number[] {
  const pairs = Math.floor(n / 2);
  const reach = Math.sqrt(((n - 1) * variance) / (2 * pairs));
  return Array.from({ length: n }, (_, k) =>
    k === 2 * pairs ? mean : mean + (k % 2 === 0 ? reach : -reach),
  );
}

/** The reference as tables: a metre for each tenth of a million years, dated beds at both ends, the trait on a plain scale. */
function tablesOf({ elapsedMyr, means, variances, n }: ReferenceSection) {
  const rows = elapsedMyr.flatMap((_, level) =>
    individualsOf(means[level]!, variances[level]!, n[level]!).map(
      (value, each) => `${level}-${each},l${level},m2,fresh,${value}`,
    ),
  );
  const bed = (at: number) => (at === 0 ? 'foot-bed' : at === elapsedMyr.length - 1 ? 'head-bed' : '');
  return {
    'traits.yaml': (text: string) => text.replace('scale: log', 'scale: plain'),
    'horizons.yaml': `- { id: lower-shelf, formation: Shelf, age: { from: 34.0, to: 32.0 }, sources: [hopper-notes] }
- { id: upper-shelf, formation: Shelf, age: { date: 28.50, plusMinus: 0.20, sigma: 2 } }
- { id: gorse-clay, formation: Gorse Clay, age: { stage: Langhian } }
- { id: foot-bed, formation: Bank, age: { date: 10, plusMinus: 0.2, sigma: 2 } }
- { id: head-bed, formation: Bank, age: { date: ${10 - elapsedMyr.at(-1)!}, plusMinus: 0.2, sigma: 2 } }
`,
    'sheets/levels.csv': `level,height (m),horizon\n${elapsedMyr.map((myr, at) => `l${at},${10 * myr},${bed(at)}`).join('\n')}\n`,
    'sheets/rows.csv': `catalogNumber,level,tooth,wear,tooth-row-length (mm)\n${rows.join('\n')}\n`,
  };
}

test.each(Object.entries(referenceSections))(
  '%s: a section compiled from its tables has the weights and limits of the reference',
  async (_, section) => {
    const { compiled, findings } = await compileSection(tablesOf(section));
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const { best, weights } = section.results.pooled;
    for (const form of ['joint', 'steps'] as const)
      for (const model of compiled!.section!.models[form]) {
        const known = best[form][model.name];
        expect(model.logLikelihood).toBeCloseTo(known.logLikelihood, 6);
        expect(model.weight).toBeCloseTo(weights[form][model.name], 5);
        // the reference looks for a maximum, which ends a hair above the bound
        expect(model.varianceOnBound).toBe(known.variance < 1e-9);
      }
    const largest = Math.max(...Object.values(weights.joint));
    expect(compiled!.section!.verdict.code === 'cannot-tell').toBe(largest < 0.9);
  },
);

test('a level has the mean of its individuals and an interval by the spread that all levels share', async () => {
  const { compiled } = await compileSection({
    'sheets/rows.csv': (text) => text.replaceAll('blunt', 'fresh'),
  });
  const { levels, spread } = compiled!.section!;
  const one = levels.find(({ id }) => id === 'one')!;
  const logs = [10, 10.4, 9.7, 8].map(Math.log);
  const mean = logs.reduce((sum, value) => sum + value, 0) / 4;
  expect(one.estimate).toBeCloseTo(Math.exp(mean), 10);
  expect(one.unwornMean).toBeCloseTo(Math.exp(mean), 10);
  // five levels of four: 15 degrees of freedom
  expect(spread!.df).toBe(15);
  const reach = studentQuantile(0.975, 15) * Math.sqrt(spread!.variance / 4);
  expect(one.interval[1]).toBeCloseTo(Math.exp(mean + reach), 10);
});

test('worn crowns lift the mean of a level above that of the unworn ones alone, or leave it, and never lower it', async () => {
  const { compiled } = await compileSection();
  for (const { estimate, unwornMean, worn, unworn, effectiveN } of compiled!.section!.levels) {
    if (estimate === null) continue;
    expect([unworn, worn]).toEqual([3, 1]);
    expect(estimate).toBeGreaterThanOrEqual(unwornMean! - 1e-9);
    expect(effectiveN!).toBeGreaterThanOrEqual(3);
    expect(effectiveN!).toBeLessThan(4);
  }
});

test('levels have ages on straight lines between the dated beds, with errors of the dates', async () => {
  const { compiled } = await compileSection();
  const { levels, change, beds } = compiled!.section!;
  // lower-shelf is 34 to 32 Ma: 33, sd 2/sqrt(12); upper-shelf 28.5, sd 0.1
  expect(beds.map(({ ageMa }) => ageMa)).toEqual([33, 28.5]);
  const three = levels.find(({ id }) => id === 'three')!;
  expect(three.ageMa).toBeCloseTo(30.75, 10);
  expect(three.ageSigmaMa).toBeCloseTo(Math.hypot(0.5 * (2 / Math.sqrt(12)), 0.5 * 0.1), 10);
  expect(change!.intervalMyr).toBeCloseTo(4.5 * 0.85, 10);
  expect(change!.darwins.interval).toBe(change!.intervalMyr);
});

test('rates a generation need a generation with its source', async () => {
  const { compiled } = await compileSection({
    'section.yaml': (text) => `${text}generation: { years: 4, source: hopper-notes }\n`,
  });
  const { change } = compiled!.section!;
  expect(change!.haldanes!.interval).toBeCloseTo((change!.intervalMyr * 1e6) / 4, 3);
});

test('the result digest follows the section, and the words of the section do not change it', async () => {
  const plain = (await compileSection()).compiled!.resultDigest;
  const moved = await compileSection({
    'sheets/rows.csv': replaced('00,one,m2,fresh,10.0', '00,one,m2,fresh,10.6'),
  });
  const renamed = await compileSection({ 'section.yaml': replaced('Shelf Bank', 'Bank of the Shelf') });
  expect(moved.compiled!.resultDigest).not.toBe(plain);
  expect(renamed.compiled!.resultDigest).toBe(plain);
});

test('sampled dates move the weights more where they are less sure, and no draw moves them where there is none', async () => {
  const tables = tablesOf(referenceSections['gentleTrend']!);
  const widths: number[] = [];
  for (const plusMinus of ['0.01', '0.30']) {
    // Between two dates alone an error stretches all of time alike, and moves no weight.
    const bed = `- { id: middle-bed, formation: Bank, age: { date: 9.4, plusMinus: ${plusMinus}, sigma: 2 } }\n`;
    const { compiled } = await compileSection({
      ...tables,
      'horizons.yaml': tables['horizons.yaml'] + bed,
      'sheets/levels.csv': `${tables['sheets/levels.csv']}bed,5.9,middle-bed\n`,
    });
    const { moved, models } = compiled!.section!;
    expect(moved!.sets).toBe(200);
    for (const { name, least, greatest } of moved!.weights) {
      const { weight } = models.joint.find((model) => model.name === name)!;
      expect(least).toBeLessThanOrEqual(weight! + 1e-9);
      expect(greatest).toBeGreaterThanOrEqual(weight! - 1e-9);
    }
    widths.push(Math.max(...moved!.weights.map(({ least, greatest }) => greatest - least)));
  }
  expect(widths[1]).toBeGreaterThan(3 * widths[0]!);
  const undrawn = await compileSection({
    'lineage.yaml': added('estimate: { ageDraws: 0 }\n'),
  });
  expect(undrawn.compiled!.section!.moved).toBeNull();
});

test('a length on log scale has rates between all pairs of levels; on a plain one it has none, and no change either', async () => {
  const { rates, change } = (await compileSection()).compiled!.section!;
  expect(rates!.pairs).toHaveLength(10);
  expect(rates!.total).toBe(10);
  const whole = rates!.pairs.at(-1)!;
  expect([whole.from, whole.to]).toEqual(['one', 'five']);
  expect(whole.darwins).toBeCloseTo(Math.abs(change!.darwins.rate), 12);
  // The best walk of these levels takes no steps beyond the errors of their means.
  expect(rates!.walk).toBeNull();
  const plain = await compileSection({ 'traits.yaml': (text) => text.replace('scale: log', 'scale: plain') });
  expect(plain.compiled!.section).toMatchObject({ rates: null, change: null, steps: [] });
});

test('an animal that is known from its section alone lived between the beds of that section', async () => {
  const { compiled, findings } = await compileSection({
    'specimens.yaml': (text) => text.replace(/- id: hm-8[\s\S]*?(?=- id: hm-9)/, ''),
  });
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  // lower-shelf is 34 to 32 Ma, upper-shelf 28.7 to 28.3
  const { age } = compiled!.taxa.find(({ id }) => id === 'collina-media')!;
  expect([age!.from, age!.to]).toEqual([34, 28.3]);
});

test('dates that do not part their beds give no ages, and the page does not say that dates are missing', async () => {
  const { compiled } = await compileSection({
    'horizons.yaml': (text) => text.replace('date: 28.50, plusMinus: 0.20', 'date: 33.00, plusMinus: 0.20'),
  });
  expect(compiled!.section!.verdict).toMatchObject({ code: 'cannot-tell', reason: 'dates-astray' });
  const undated = await compileSection({
    'sheets/levels.csv': (text) => text.replace('upper-shelf', '').replace('lower-shelf', ''),
  });
  expect(undated.compiled!.section!.verdict).toMatchObject({ code: 'cannot-tell', reason: 'no-ages' });
});
