import { expect, test } from 'vitest';
import { estimateTrait, correctedCriterion } from '../../../analysis/estimate/index.ts';
import { compareModels } from '../../../analysis/estimate/models/compare-models.ts';
import { pullLogLikelihood } from '../../../analysis/estimate/models/pull-likelihood.ts';
import { compareSensitivity, lambdaTree } from '../../../analysis/estimate/models/sensitivity.ts';
import { makeMessages } from '../../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { passUp } from '../../../analysis/estimate/passes/pass-up.ts';
import { findBestRate } from '../../../analysis/estimate/rate/fit.ts';
import { studentProbability, studentQuantile } from '../../../analysis/statistics/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import coverage from '../../reference/values/coverage.json' with { type: 'json' };
import integrated from '../../reference/values/integrated-rate.json' with { type: 'json' };
import nineTips from '../../reference/values/nine-tips.json' with { type: 'json' };
import models from '../../reference/values/nine-tips-models.json' with { type: 'json' };

function estimated(question: Parameters<typeof estimateTrait>[0]) {
  const answer = estimateTrait(question);
  if (!answer.estimated) throw new Error(answer.reason);
  return answer;
}

const valueOfG = (withError: boolean) =>
  estimated({ tree, observations: observe(['G'], withError) }).nodes.find(({ label }) => label === 'G')!;

// 2 P(t < 1.96) − 1, R 4.2.2
test.each(coverage.exact)(
  'a normal quantile for t: with $n taxa an interval for 19 of 20 would hold less often',
  ({ n, coverage_normal_REML: held }) => {
    expect(held).toBeLessThan(0.95);
    expect(2 * studentProbability(1.959963984540054, n - 1) - 1).toBeCloseTo(held, 12);
    const [value, { mean, sd: deviation }] = [valueOfG(false), nineTips.cases[0]!.prediction[0]!];
    expect(value.interval[1]).toBeCloseTo(mean + studentQuantile(0.975, 7) * deviation, 9);
  },
);

test('the rate by full likelihood for the restricted one: it is too small by (n − 1) / n', () => {
  const network = buildNetwork(tree, observe(['G'], false));
  const [restricted, full] = (['restricted', 'full'] as const).map((kind) =>
    findBestRate(network, 'brownian', kind)!,
  );
  expect(full!.rate / restricted!.rate).toBeCloseTo(7 / 8, 6);
  expect(estimated({ tree, observations: observe(['G'], false) }).model.rateReml).toBeCloseTo(
    nineTips.cases[0]!.sigma2_REML,
    9,
  );
});

test('the root’s mean taken as known: its own variance is part of every value’s', () => {
  const { sd: deviation, varGivenKnownMean } = nineTips.cases[0]!.prediction[0]!;
  // without sampling variance the t interval has deviation² (n − 1) / (n − 3) as variance
  expect(valueOfG(false).standardDeviation ** 2).toBeCloseTo((deviation ** 2 * 7) / 5, 6);
  expect(deviation ** 2 - varGivenKnownMean).toBeGreaterThan(1e-3);
});

test('lambda scaling the tips’ own variances: only what they share may shrink', () => {
  const half = lambdaTree(tree, 0.5);
  const depth = (which: typeof tree, tip: number) => {
    let sum = 0;
    for (let node = tip; which.parent[node] !== -1; node = which.parent[node]!)
      sum += which.branchLength[node]!;
    return sum;
  };
  for (const label of Object.keys(nineTips.y)) {
    const tip = tree.label.indexOf(label);
    expect(depth(half, tip)).toBeCloseTo(depth(tree, tip), 12);
  }
  const known = models.grid.lambda.find(({ lambda }) => lambda === 0.5)!;
  const network = buildNetwork(half, observe([], false));
  expect(findBestRate(network, 'brownian', 'full')!.logLikelihood).toBeCloseTo(known.ll, 8);
});

test('a pull with its root fixed for one with a stationary root: on a tree with fossils they differ', () => {
  for (const [index, { alpha, s2, ll }] of models.grid.OU_stationary.entries()) {
    const { logLikelihood } = pullLogLikelihood(tree, observe([], false), { pull: alpha, rate: s2 });
    expect(logLikelihood).toBeCloseTo(ll, 8);
    // at a strong pull nothing is left of the root, and both are one
    expect(Math.abs(logLikelihood - models.grid.OU_fixedRootAtTheta[index]!.ll)).toBeGreaterThan(1e-3);
  }
});

test('a parameter at the end of its range printed as a number: it is said to lie there', () => {
  const { model } = estimated({
    tree,
    observations: observe(['G'], true).map((one, index) => ({
      ...one,
      mean: 2 + 0.01 * (index % 2),
      variance: 1,
    })),
  });
  expect(model.compared[0]).toMatchObject({ name: 'brownian', rate: 0, note: 'rate-at-zero' });
  const [lambda] = compareSensitivity(tree, observe([], false));
  expect(lambda).toMatchObject({ name: 'lambda', parameter: 1, onBound: 'highest' });
});

test('a rate plugged in for one integrated: with sampling variance the limits are other ones, and wider', () => {
  const { interval } = valueOfG(true);
  expect(interval[0]).toBeCloseTo(integrated.cases[1]!.lower, 9);
  const { mean, sd, t975 } = nineTips.cases[1]!.prediction[0]!;
  const reach = t975 * sd;
  expect(mean - reach).toBeCloseTo(1.8641, 4);
  expect(interval[1] - interval[0]).toBeGreaterThan(2 * reach);
});

test('a criterion of restricted likelihoods of different means: only full ones are compared, from k + 2 taxa on', () => {
  const compared = compareModels(buildNetwork(tree, observe([], false)));
  const { BM, trend } = models.models;
  expect(compared.map(({ logLikelihood }) => logLikelihood)).toEqual([
    expect.closeTo(BM.ll, 8),
    expect.closeTo(trend.ll, 8),
  ]);
  expect([3, 4, 5].map((taxa) => correctedCriterion(-1, 3, taxa) === null)).toEqual([true, true, false]);
});

test('all but one child by subtraction: a twig of 1e-12 of the tree loses no digits', () => {
  const near = dateAsGiven(parseNewick('((A:1e-10,B:50):10,(C:60,(D:30,E:30):30):0);'), 60);
  const means = [1, 2, 3, 4].map((mean, index) => ({ taxon: 'BCDE'[index]!, mean, variance: 0.01 }));
  const [with12, without] = [1e-10, 1e-7].map((twig) => {
    const own = dateAsGiven(parseNewick(`((A:${twig},B:50):10,(C:60,(D:30,E:30):30):0);`), 60);
    return estimated({ tree: own, observations: means }).nodes.find(({ label }) => label === 'A')!;
  });
  expect(with12!.median).toBeCloseTo(without!.median, 7);
  expect(with12!.standardDeviation).toBeCloseTo(without!.standardDeviation, 7);
  const network = buildNetwork(near, [{ taxon: 'A', mean: 1, variance: 0 }, ...means]);
  expect(Number.isFinite(passUp(network, 0.1, makeMessages(network.parent.length)))).toBe(true);
});

test('two exact tips at no distance, solved all the same: they are an error that names both', () => {
  const twins = dateAsGiven(parseNewick('((A:0,B:0):2,(C:1,D:2):1);'));
  const observations = ['A', 'B', 'C', 'D'].map((taxon, index) => ({ taxon, mean: index, variance: 0 }));
  expect(() => estimateTrait({ tree: twins, observations })).toThrow(/"A".*"B"|"B".*"A"/);
});

test('a limit of one specimen for a limit of its taxon’s mean: the mean lies below it in two of five cases', () => {
  const limit = { taxon: 'G', specimen: 'g', atLeast: 2.9 };
  const low = (twigVariance: number) =>
    estimated({ tree, observations: observe(['G'], true), limits: [{ ...limit, twigVariance }] }).nodes.find(
      ({ label }) => label === 'G',
    )!.interval[0];
  expect(low(0)).toBeGreaterThan(2.9);
  expect(low(0.3 ** 2)).toBeLessThan(2.9 - 0.2);
});
