import { expect, test } from 'vitest';
import { findChartUnit, weightedMean } from '../../../analysis/ages/index.ts';
import { BoundedValue } from '../../../analysis/estimate/limits/bounded-end.ts';
import { slopeOnTree } from '../../../analysis/estimate/index.ts';
import {
  bendingEnergy,
  fitSpline,
  generalSuperimposition,
  shapeDistance,
} from '../../../analysis/geometry/index.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { inverseNormal, normalProbability, normalUpperTail } from '../../../analysis/statistics/index.ts';
import { angleDegrees } from '../../../analysis/traits/index.ts';
import { congruenceOf, fitSection, kendallTest, spearmanTest } from '../../../analysis/trend/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { chartBases } from '../../reference/chart-bases.ts';
import { planePoints } from '../../reference/plane-points.ts';
import { levelsOf, referenceSections } from '../../reference/section-levels.ts';
import ages from '../../reference/values/ages.json' with { type: 'json' };
import gorillas from '../../reference/values/gorillas.json' with { type: 'json' };
import splines from '../../reference/values/splines.json' with { type: 'json' };

test('a bound far in a tail by the lower tail: the quantile would lie below the bound', () => {
  const naive = inverseNormal(
    Math.min(1 - 2 ** -53, normalProbability(8) + 1e-3 * (1 - normalProbability(8))),
  );
  expect(naive).not.toBeGreaterThanOrEqual(8.0001);
  const drawn = new BoundedValue().set(0, 1, { low: 8, high: Infinity }).placeAt(0.5);
  expect(drawn).toBeGreaterThan(8);
  expect(normalUpperTail(drawn) / normalUpperTail(8)).toBeCloseTo(0.5, 9);
});

test('a series or a normal curve for the probability of ranks: ten levels and ties have the exact one', () => {
  const x = Array.from({ length: 10 }, (_, k) => k);
  expect(spearmanTest(x, x)).toMatchObject({ method: 'exact' });
  expect(spearmanTest(x, x).pTwoSided).toBeCloseTo(2 / 3_628_800, 15);
  // with ties: all 40,320 orders by enumeration, R 4.2.2; a normal curve gives 0.00502, with continuity 0.00740
  const tied = kendallTest([1, 2, 2, 3, 4, 5, 5, 6], [2.1, 2.4, 2.3, 2.4, 2.9, 3, 2.7, 3]);
  expect(tied.pTwoSided).toBeCloseTo(0.0031746031746031746, 12);
});

test('criteria of levels and of steps side by side: each form numbers its own models, and they differ', () => {
  const levels = levelsOf(Object.values(referenceSections)[0]!);
  const [joint, steps] = (['joint', 'steps'] as const).map((form) => {
    const models = fitSection(levels, { form, pooled: true });
    if (typeof models === 'string') throw new Error(models);
    return models;
  });
  expect(joint!.map(({ parameters }) => parameters)).toEqual([2, 3, 2]);
  expect(steps!.map(({ parameters }) => parameters)).toEqual([1, 2, 2]);
  expect(joint!.reduce((sum, { weight }) => sum + weight!, 0)).toBeCloseTo(1, 12);
  expect(steps!.reduce((sum, { weight }) => sum + weight!, 0)).toBeCloseTo(1, 12);
});

test('squares added over x and y for their mean: the bending energy is given for each, so that it can be told', () => {
  const { X, Y, bendingEnergyTotal } = splines.tps.bookstein1989_fig;
  const [x, y] = bendingEnergy(fitSpline(planePoints(X), planePoints(Y)));
  // Bookstein 1989 prints the mean, 0.0430; inputs and print from memory
  expect((x + y) / 2).toBeCloseTo(0.043, 4);
  expect(x + y).toBeCloseTo(bendingEnergyTotal, 11);
});

test('a full mean for a partial one: the first gorilla lies at two angles that differ in the sixth digit', () => {
  const shapes = gorillas.gorillas.females.landmarks.map(planePoints);
  const angle = (rule: 'fitted' | 'one') =>
    shapeDistance(shapes[0]!, generalSuperimposition(shapes, rule).mean).angleRad;
  expect(angle('fitted')).toBeCloseTo(0.034858, 7);
  expect(angle('one')).toBeCloseTo(0.0348565, 7);
});

test('the scatter of a weighted mean over n − 2: it has n − 1 degrees of freedom', () => {
  const { x, sigma, MSWD } = ages.ages.weighted;
  const dates = x.map((ageMa, k) => ({ ageMa, sigmaMa: sigma[k]! }));
  const found = weightedMean(dates);
  const squares = dates.reduce((sum, { ageMa, sigmaMa }) => sum + ((ageMa - found.meanMa) / sigmaMa) ** 2, 0);
  expect(found.mswd).toBeCloseTo(MSWD, 12);
  expect(found.mswd).toBeCloseTo(squares / 3, 12);
});

test('the root, and finds of one age, in the index of consistency: the root is out, and the same age agrees', () => {
  const finds = (ages: Record<string, number>) =>
    new Map(Object.entries(ages).map(([label, firstMa]) => [label, { firstMa, lastMa: firstMa - 1 }]));
  const tree = parseNewick('(A,(B,C));');
  expect(congruenceOf(tree, finds({ A: 10, B: 10, C: 5 })).consistency).toBe(1);
  expect(congruenceOf(tree, finds({ A: 9, B: 10, C: 5 })).consistency).toBe(0);
  // completeness may fall below zero
  expect(congruenceOf(tree, finds({ A: 1, B: 60, C: 60 })).completeness).toBeLessThan(0);
});

test('a chart read by a machine without a look: its known slips are mended', () => {
  // International Chronostratigraphic Chart v2024/12; the slips are those of its machine-readable forms
  expect(findChartUnit('Aquitanian')!.fromMa).toBe(23.04);
  expect(findChartUnit('Valanginian')!.fromMa).not.toBe(findChartUnit('Hauterivian')!.fromMa);
  expect(findChartUnit('Olenekian')!.fromMa).not.toBe(findChartUnit('Anisian')!.fromMa);
  expect(chartBases.length).toBeGreaterThan(90);
});

test('an angle by its cosine: near 0 and 180 degrees half the digits would be gone', () => {
  const tiny = 1e-9;
  expect(angleDegrees([1, 0], [0, 0], [1, tiny])).toBeCloseTo((tiny * 180) / Math.PI, 20);
  expect(180 - angleDegrees([1, 0], [0, 0], [-1, tiny])).toBeCloseTo((tiny * 180) / Math.PI, 12);
});

/** A comb of eleven finds through time, one branching off after another, and one value of a random walk at each. */
function combWalk(set: number) {
  const random = seededRandom('strangers', set);
  const count = 11;
  const labels = Array.from({ length: count }, (_, k) => `t${k}`);
  // from the youngest pair down to the root, each find half a million years after its fork
  const newick = labels.slice(0, -1).reduceRight((rest, label) => `(${label}:0.5,${rest}:1)`, labels.at(-1)!);
  const tree = dateAsGiven(parseNewick(`${newick};`));
  const value = new Float64Array(tree.parent.length);
  for (let node = tree.parent.length - 2; node >= 0; node--)
    value[node] = value[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normalDraw(random);
  const tips = labels.map((label) => tree.label.indexOf(label));
  return {
    tree,
    times: tips.map((tip) => -tree.ageMa[tip]!),
    observations: tips.map((tip, k) => ({ taxon: labels[k]!, mean: value[tip]!, variance: 0 })),
  };
}

test('ranks across relatives as if they were strangers: they find trends that the tree test does not', () => {
  let [byRanks, onTree] = [0, 0];
  const sets = 600;
  for (let set = 0; set < sets; set++) {
    const { tree, times, observations } = combWalk(set);
    const values = observations.map(({ mean }) => mean);
    byRanks += Number(kendallTest(times, values).pTwoSided < 0.05);
    const slope = slopeOnTree({ tree, observations, predictor: 'time' });
    onTree += Number(typeof slope !== 'string' && slope.pValue < 0.05);
  }
  // where nothing trends each should find one in 5 of 100; 8 is beyond chance at one in a thousand
  expect(byRanks / sets).toBeGreaterThan(0.12);
  expect(onTree / sets).toBeLessThan(0.08);
});
