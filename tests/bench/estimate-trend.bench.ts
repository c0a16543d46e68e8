import { expect, test } from 'vitest';
import { slopeOnTree, type Observation } from '../../analysis/estimate/index.ts';
import { fitSection, kendallTest, spearmanTest, type SectionLevel } from '../../analysis/trend/index.ts';
import { normalDraw, seededRandom, type Random } from '../../analysis/random/index.ts';
import { dateAsGiven, parseNewick, type DatedTree } from '../../analysis/tree/index.ts';

/** Minutes that a measurement may take on a slow machine. */
const timeout = 10 * 60_000;

/**
 * A comb of eleven finds that branch off one after the other, a step apart, each on a twig of so many steps; the first of them
 * may be living. The shorter the twigs, the nearer the finds lie to one line of descent, and the more ranks mislead.
 */
function combTree(twig: number, living: boolean): DatedTree {
  const names = Array.from({ length: 11 }, (_, k) => `t${k}`);
  const inner = names.slice(0, -1).reduceRight((rest, name, k) => {
    const length = living && k === 0 ? names.length - 1 + twig : twig;
    return `(${name}:${length},${rest}:1)`;
  }, names.at(-1)!);
  return dateAsGiven(parseNewick(`${inner};`));
}

function simulate(tree: DatedTree, random: Random): Observation[] {
  const values = new Float64Array(tree.parent.length);
  for (let node = values.length - 2; node >= 0; node--)
    values[node] = values[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normalDraw(random);
  return tree.label.flatMap((taxon, node) =>
    taxon === '' ? [] : [{ taxon, mean: values[node]!, variance: 0 }],
  );
}

test.each([
  [0.5, true],
  [2, true],
  [3, true],
  [4, true],
  [0.5, false],
  [3, false],
])(
  'how often a trend is found at 5%% where there is none, twigs of %d steps, outgroup living %s',
  { timeout },
  (twig, living) => {
    const tree = combTree(twig, living);
    let [onTree, byRank] = [0, 0];
    const sets = 4000;
    for (let set = 0; set < sets; set++) {
      const observations = simulate(tree, seededRandom('comb', set));
      const slope = slopeOnTree({ tree, observations, predictor: 'time' });
      onTree += Number(typeof slope !== 'string' && slope.pValue < 0.05);
      const times = observations.map(({ taxon }) => -tree.ageMa[tree.label.indexOf(taxon)]!);
      const means = observations.map(({ mean }) => mean);
      byRank += Number(kendallTest(times, means).pTwoSided < 0.05);
    }
    const percent = (found: number) => ((100 * found) / sets).toFixed(1);
    console.log(
      `comb of eleven, twigs of ${twig} steps, first tip ${living ? 'living' : 'fossil'}: tree test ${percent(onTree)}%, rank test as if unrelated ${percent(byRank)}%`,
    );
    expect(onTree / sets).toBeLessThan(0.06);
    expect(onTree).toBeLessThan(byRank);
  },
);

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
