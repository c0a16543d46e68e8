import { expect, test } from 'vitest';
import { slopeOnTree, type Observation } from '../../analysis/estimate/index.ts';
import { fitSection, kendallTest, spearmanTest, type SectionLevel } from '../../analysis/trend/index.ts';
import { normalDraw, seededRandom, type Random } from '../../analysis/random/index.ts';
import { dateByEqualShare, parseNewick, type DatedTree } from '../../analysis/tree/index.ts';

/** Minutes that a measurement may take on a slow machine. */
const timeout = 10 * 60_000;

/** A comb of eleven tips that branch off one after the other, the first of them living. */
function combTree(living: boolean): DatedTree {
  const names = Array.from({ length: 11 }, (_, k) => `t${k}`);
  const text = names.reduceRight((inner, name) => (inner === '' ? name : `(${name},${inner})`), '');
  const ages = new Map(names.map((name, k) => [name, k === 10 || (living && k === 0) ? 0 : 50 - 4.5 * k]));
  return dateByEqualShare(parseNewick(`${text};`), ages, 55);
}

function simulate(tree: DatedTree, random: Random): Observation[] {
  const values = new Float64Array(tree.parent.length);
  for (let node = values.length - 2; node >= 0; node--)
    values[node] = values[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normalDraw(random);
  return tree.label.flatMap((taxon, node) =>
    taxon === '' ? [] : [{ taxon, mean: values[node]!, variance: 0 }],
  );
}

test('how often a trend is found at 5% where there is none, on a comb of eleven', { timeout }, () => {
  for (const living of [true, false]) {
    const tree = combTree(living);
    let [onTree, byRank] = [0, 0];
    const sets = 4000;
    for (let set = 0; set < sets; set++) {
      const observations = simulate(tree, seededRandom('comb', set));
      const slope = slopeOnTree({ tree, observations, predictor: 'time' });
      onTree += Number(typeof slope !== 'string' && slope.pValue < 0.05);
      const times = observations.map(({ taxon }) => -tree.ageMa[tree.label.indexOf(taxon)]!);
      byRank += Number(
        kendallTest(
          times,
          observations.map(({ mean }) => mean),
        ).pTwoSided < 0.05,
      );
    }
    console.log(
      `comb of eleven, first tip ${living ? 'living' : 'fossil'}: tree test ${((100 * onTree) / sets).toFixed(1)}%, rank test as if unrelated ${((100 * byRank) / sets).toFixed(1)}%`,
    );
    expect(onTree).toBeLessThan(byRank);
  }
});

test('all of a section of 200 levels', { timeout }, async ({ bench }) => {
  const random = seededRandom('section bench');
  let value = 0;
  const levels = Array.from({ length: 200 }, (_, k): SectionLevel => {
    value += 0.1 * normalDraw(random);
    return { elapsedMyr: 0.01 * k, mean: value, variance: 0.02, n: 100 };
  });
  const times = levels.map(({ elapsedMyr }) => elapsedMyr);
  const means = levels.map(({ mean }) => mean);
  await bench('three models in both forms with limits, and both rank tests', () => {
    fitSection(levels, { form: 'joint', pooled: true });
    fitSection(levels, { form: 'steps', pooled: true });
    kendallTest(times, means);
    spearmanTest(times, means);
  }).run();
});
