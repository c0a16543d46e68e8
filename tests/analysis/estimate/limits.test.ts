import { expect, test } from 'vitest';
import { readGivenOneLimit } from '../../../analysis/estimate/limits/condition-on-one.ts';
import { readGivenSeveralLimits } from '../../../analysis/estimate/limits/condition-on-several.ts';
import { BoundedValue } from '../../../analysis/estimate/limits/bounded-end.ts';
import type { PlacedLimit } from '../../../analysis/estimate/limits/limit-observation.ts';
import { diagnoseChains } from '../../../analysis/estimate/limits/chain-diagnostics.ts';
import { findFit, type Fit } from '../../../analysis/estimate/rate/fit.ts';
import { estimateTrait } from '../../../analysis/estimate/index.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import { fitAtRate } from '../../reference/one-rate.ts';
import known from '../../reference/values/limits.json' with { type: 'json' };
import nineTips from '../../reference/values/nine-tips.json' with { type: 'json' };
import { readAtRates } from '../../../analysis/estimate/passes/per-rate.ts';

function conditionOnOne(fit: Fit, limit: PlacedLimit, nodes: readonly number[]) {
  return readAtRates(fit, readGivenOneLimit(fit, limit, nodes, 0.95));
}

function conditionOnSeveral(
  fit: Fit,
  limits: readonly PlacedLimit[],
  nodes: readonly number[],
  seed: string | number = 1,
) {
  return readAtRates(fit, readGivenSeveralLimits(fit, limits, nodes, { level: 0.95, seed }));
}

const limitOn = (taxon: string, ends: { atLeast?: number; atMost?: number }, twigVariance = 0) => ({
  taxon,
  specimen: `${taxon}-1`,
  ...ends,
  twigVariance,
});

test('a floor on one missing tip moves another as the joint distribution says', () => {
  const fit = fitAtRate(buildNetwork(tree, observe(['G', 'C'], false)), 'brownian', known.joint.s2);
  const at = (label: string) => fit.network.nodeOf[tree.label.indexOf(label)]!;
  const one = limitOn('G', { atLeast: known.joint.bound_G });
  const exact = conditionOnOne(fit, { limit: one, at: at('G') }, [at('C')])[0]!;
  expect(exact.standardDeviation ** 2).toBeCloseTo(known.joint.var_C_exact, 9);
  // the shift is a hundredth of the deviation: so near to normal that median and mean agree to 1e-5
  expect(exact.median).toBeCloseTo(known.joint.mean_exact[1]!, 4);
  const sampled = conditionOnSeveral(fit, [{ limit: one, at: at('G') }], [at('C'), at('G')]);
  expect(sampled.settled).toBe(true);
  expect(sampled.values[1]!.standardDeviation).toBeCloseTo(Math.sqrt(known.joint.var_package[0]!), 1);
});

test('quadrature and sampling agree on one limit with a twig, the rate integrated', () => {
  const network = buildNetwork(tree, observe(['G', 'C'], true));
  const fit = findFit(network, 'brownian')!;
  const at = network.nodeOf[tree.label.indexOf('G')]!;
  const nodes = ['G', 'C', 'n4', 'root'].map((label) => network.nodeOf[tree.label.indexOf(label)]!);
  const limit = limitOn('G', { atLeast: 2.9 }, 0.02);
  const exact = conditionOnOne(fit, { limit, at }, nodes);
  const sampled = conditionOnSeveral(fit, [{ limit, at }], nodes, 'agree').values;
  nodes.forEach((_, index) => {
    const scale = exact[index]!.standardDeviation;
    expect(Math.abs(sampled[index]!.median - exact[index]!.median)).toBeLessThan(0.05 * scale);
    expect(Math.abs(sampled[index]!.interval[0] - exact[index]!.interval[0])).toBeLessThan(0.1 * scale);
    expect(Math.abs(sampled[index]!.interval[1] - exact[index]!.interval[1])).toBeLessThan(0.1 * scale);
  });
});

test('a limit of one specimen is not a limit of its taxon: the mean may lie below', () => {
  // with a wide twig the interval reaches under the floor; simulated as the specimen's own value about its taxon's
  const observations = observe(['G'], false);
  const wide = estimateTrait({ tree, observations, limits: [limitOn('G', { atLeast: 2.9 }, 0.3 ** 2)] });
  const plain = estimateTrait({ tree, observations });
  if (!wide.estimated || !plain.estimated) throw new Error('not estimated');
  const at = tree.label.indexOf('G');
  expect(wide.nodes[at]!.interval[0]).toBeLessThan(2.9);
  expect(wide.nodes[at]!.median).toBeGreaterThan(plain.nodes[at]!.median);
  expect(wide.model.rateMedian).toBe(plain.model.rateMedian);
});

test('one limit on a twig has the distribution of simulated specimens', () => {
  const [withoutG] = nineTips.cases;
  const fit = fitAtRate(buildNetwork(tree, observe(['G'], false)), 'brownian', withoutG!.sigma2_REML);
  const node = fit.network.nodeOf[tree.label.indexOf('G')]!;
  const { mean, sd: deviation } = withoutG!.prediction[0]!;
  const value = conditionOnOne(fit, { limit: limitOn('G', { atLeast: 2.8 }, 0.04), at: node }, [node])[0]!;
  const random = seededRandom('specimens');
  const kept: number[] = [];
  while (kept.length < 20_000) {
    const taxon = mean + deviation * normalDraw(random);
    if (taxon + 0.2 * normalDraw(random) > 2.8) kept.push(taxon);
  }
  kept.sort((a, b) => a - b);
  const share = (at: number) => kept.filter((taxon) => taxon < at).length / kept.length;
  expect(Math.abs(share(value.median) - 0.5)).toBeLessThan(0.014);
  expect(Math.abs(share(value.interval[0]) - 0.025)).toBeLessThan(0.0045);
  expect(Math.abs(share(value.interval[1]) - 0.975)).toBeLessThan(0.0045);
});

test('two limits are sampled, settle, and depend on the seed by less than their error', () => {
  const limits = [
    limitOn('G', { atLeast: 2.7 }, 0.02),
    { ...limitOn('C', { atMost: 2.9 }, 0.02), specimen: 'C-2' },
  ];
  const ask = (seed: number) =>
    estimateTrait({ tree, observations: observe(['G', 'C'], true), limits, seed });
  const [one, same, other] = [ask(1), ask(1), ask(2)];
  if (!one.estimated || !same.estimated || !other.estimated) throw new Error('not estimated');
  expect(one).toEqual(same);
  expect(one.limits).toMatchObject({ method: 'sampling', reported: true });
  expect(one.limits.effectiveSize!).toBeGreaterThan(400);
  expect(one.limits.probabilities.map(({ specimen }) => specimen)).toEqual(['G-1', 'C-2']);
  const at = tree.label.indexOf('G');
  expect(other.nodes[at]!.median).not.toBe(one.nodes[at]!.median);
  expect(Math.abs(other.nodes[at]!.median - one.nodes[at]!.median)).toBeLessThan(
    0.05 * one.nodes[at]!.standardDeviation,
  );
});

test('a limit that the relatives find very improbable is answered with its probability', () => {
  const answer = estimateTrait({
    tree,
    observations: observe(['G'], false),
    limits: [limitOn('G', { atLeast: 9 }, 0.01)],
  });
  if (!answer.estimated) throw new Error(answer.reason);
  expect(answer.limits.probabilities[0]!.probability).toBeLessThan(0.001);
  const { median, interval } = answer.nodes[tree.label.indexOf('G')]!;
  expect([median, ...interval].every(Number.isFinite)).toBe(true);
});

test('limits of measured taxa are passed over, and empty or crossed limits are errors', () => {
  const observations = observe(['G'], true);
  const plain = estimateTrait({ tree, observations });
  expect(estimateTrait({ tree, observations, limits: [limitOn('A', { atLeast: 4 })] })).toEqual(plain);
  const wrong = (limit: object) => () =>
    estimateTrait({ tree, observations, limits: [{ ...limitOn('G', {}), ...limit }] });
  expect(wrong({})).toThrow('limit of "G-1" says nothing');
  expect(wrong({ atLeast: 3, atMost: 2 })).toThrow('must have its lower end below its upper, got 3 and 2');
  expect(wrong({ atLeast: 3, twigVariance: NaN })).toThrow(
    'twig variance of "G-1" must be 0 or more, got NaN',
  );
  expect(wrong({ atLeast: 3, taxon: 'X' })).toThrow('"X" has a limit but is not a tip of the tree');
});

test('draws far in the tail stay beyond the bound and have the tail mean', () => {
  const random = seededRandom('tail');
  for (const low of [8, 45]) {
    const draws = Array.from({ length: 4000 }, () =>
      new BoundedValue().set(0, 1, { low, high: Infinity }).placeAt(random()),
    );
    expect(Math.min(...draws)).toBeGreaterThanOrEqual(low);
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    // Johnson, Kotz and Balakrishnan 1994: 8.121368112236123 above 8; low + 1/low − 2/low³ far out
    const wanted = low === 8 ? 8.121368112236123 : low + 1 / low - 2 / low ** 3;
    expect(Math.abs(mean - wanted)).toBeLessThan(4 / low / Math.sqrt(draws.length));
  }
  expect(new BoundedValue().set(0, 1, { low: -Infinity, high: -8 }).placeAt(random())).toBeLessThanOrEqual(
    -8,
  );
  expect(Math.exp(new BoundedValue().set(0, 1, { low: -1, high: 2 }).logProbability())).toBeCloseTo(
    0.8185946141203637,
    12,
  );
  expect(new BoundedValue().set(0, 1, { low: 10, high: 11 }).logProbability()).toBeCloseTo(
    new BoundedValue().set(0, 1, { low: -11, high: -10 }).logProbability(),
    12,
  );
});

test('chains that disagree, and chains that creep, are told', () => {
  const random = seededRandom('chains');
  const steady = Array.from({ length: 4 }, () =>
    Float64Array.from({ length: 500 }, () => normalDraw(random)),
  );
  expect(diagnoseChains(steady).splitRHat).toBeLessThan(1.01);
  expect(diagnoseChains(steady).effectiveSize).toBeGreaterThan(1000);
  const apart = steady.map((chain, k) => chain.map((draw) => draw + k));
  expect(diagnoseChains(apart).splitRHat).toBeGreaterThan(1.2);
  const creeping = steady.map((chain) => {
    let at = 0;
    return chain.map((draw) => (at = 0.95 * at + 0.3 * draw));
  });
  expect(diagnoseChains(creeping).effectiveSize).toBeLessThan(200);
  expect(diagnoseChains([new Float64Array(10), new Float64Array(10)])).toEqual({
    splitRHat: 1,
    effectiveSize: 20,
  });
});

test('the lattice of a light fit agrees with the chains of a full one', () => {
  const network = buildNetwork(tree, observe(['G', 'C'], true));
  const at = (label: string) => network.nodeOf[tree.label.indexOf(label)]!;
  const limits = [
    { limit: limitOn('G', { atLeast: 2.7 }, 0.02), at: at('G') },
    { limit: limitOn('C', { atMost: 2.9 }, 0.02), at: at('C') },
  ];
  const [full, light] = (['full', 'light'] as const).map((effort) =>
    conditionOnSeveral(findFit(network, 'brownian', effort)!, limits, [at('G'), at('C')]),
  );
  full!.values.forEach((value, index) => {
    const other = light!.values[index]!;
    expect(Math.abs(other.median - value.median)).toBeLessThan(0.1 * value.standardDeviation);
    expect(Math.abs(other.interval[0] - value.interval[0])).toBeLessThan(0.15 * value.standardDeviation);
    expect(Math.abs(other.interval[1] - value.interval[1])).toBeLessThan(0.25 * value.standardDeviation);
  });
});
