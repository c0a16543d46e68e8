import { expect, test } from 'vitest';
import { estimateTrait, correctedCriterion } from '../../../analysis/estimate/index.ts';
import { compareModels } from '../../../analysis/estimate/models/compare-models.ts';
import { pullLogLikelihood } from '../../../analysis/estimate/models/pull-likelihood.ts';
import {
  compareSensitivity,
  lambdaLogLikelihood,
  lambdaTree,
} from '../../../analysis/estimate/models/sensitivity.ts';
import { makeMessages } from '../../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { passUp } from '../../../analysis/estimate/passes/pass-up.ts';
import { findBestRate } from '../../../analysis/estimate/rate/fit.ts';
import { studentProbability, studentQuantile } from '../../../analysis/statistics/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { nineTips } from '../../reference/nine-tips.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import { trendReference } from '../../reference/nine-tips-trend.ts';

function estimated(question: Parameters<typeof estimateTrait>[0]) {
  const answer = estimateTrait(question);
  if (!answer.estimated) throw new Error(answer.reason);
  return answer;
}

const valueOfG = (withError: boolean) =>
  estimated({ tree, observations: observe(['G'], withError) }).nodes.find(({ label }) => label === 'G')!;

// 2 P(t < 1.96) − 1, R 4.2.2
test.each([
  [5, 0.8784403402128],
  [8, 0.9091754851538676],
  [12, 0.924180913828],
])('a normal quantile for t: with %i taxa an interval for 19 of 20 would hold %f', (taxa, held) => {
  expect(2 * studentProbability(1.959963984540054, taxa - 1) - 1).toBeCloseTo(held, 12);
  const known = nineTips.cases[0];
  const [value, { mean, deviation }] = [valueOfG(false), known.tips[0]];
  expect(value.interval[1]).toBeCloseTo(mean + studentQuantile(0.975, 7) * deviation, 9);
});

test('the rate by full likelihood for the restricted one: it is too small by (n − 1) / n', () => {
  const network = buildNetwork(tree, observe(['G'], false));
  const [restricted, full] = (['restricted', 'full'] as const).map((kind) =>
    findBestRate(network, 'brownian', kind)!,
  );
  expect(full!.rate / restricted!.rate).toBeCloseTo(7 / 8, 6);
  expect(estimated({ tree, observations: observe(['G'], false) }).model.rateReml).toBeCloseTo(
    nineTips.cases[0].rateReml,
    9,
  );
});

test('the root’s mean taken as known: its own variance is part of every value’s', () => {
  // variance of G at the restricted rate with the mean known, R 4.2.2
  const withKnownMean = 0.09544979456677119;
  const { deviation } = nineTips.cases[0].tips[0];
  // without sampling variance the t interval has deviation² (n − 1) / (n − 3) as variance
  expect(valueOfG(false).standardDeviation ** 2).toBeCloseTo((deviation ** 2 * 7) / 5, 6);
  expect(deviation ** 2 - withKnownMean).toBeGreaterThan(1e-3);
});

test('lambda scaling the tips’ own variances: only what they share may shrink', () => {
  const half = lambdaTree(tree, 0.5);
  const depth = (which: typeof tree, tip: number) => {
    let sum = 0;
    for (let node = tip; which.parent[node] !== -1; node = which.parent[node]!)
      sum += which.branchLength[node]!;
    return sum;
  };
  for (const label of Object.keys(nineTips.value)) {
    const tip = tree.label.indexOf(label);
    expect(depth(half, tip)).toBeCloseTo(depth(tree, tip), 12);
  }
  const known = trendReference.allNine.lambda.find(({ lambda }) => lambda === 0.5)!;
  expect(lambdaLogLikelihood(tree, observe([], false), 0.5)).toBeCloseTo(known.logLikelihood, 8);
});

test('a pull with its root fixed for one with a stationary root: on a tree with fossils they differ', () => {
  const known = trendReference.allNine.pull.find(({ pull }) => pull === 0.05)!;
  const { logLikelihood } = pullLogLikelihood(tree, observe([], false), known);
  expect(logLikelihood).toBeCloseTo(known.logLikelihood, 8);
  // fixed root at the same pull, rate at its best, R 4.2.2
  expect(Math.abs(logLikelihood - -3.459660970526924)).toBeGreaterThan(0.5);
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
  const known = nineTips.cases[1];
  const { interval, median } = valueOfG(true);
  expect(median).toBeCloseTo(known.integrated.median, 9);
  expect(interval[0]).toBeCloseTo(known.integrated.low, 9);
  expect(interval[1]).toBeCloseTo(known.integrated.high, 9);
  const { mean, deviation } = known.tips[0];
  const reach = studentQuantile(0.975, 7) * deviation;
  expect(mean - reach).toBeCloseTo(1.8641, 4);
  expect(interval[1] - interval[0]).toBeGreaterThan(2 * reach);
});

test('a criterion of restricted likelihoods of different means: only full ones are compared, from k + 2 taxa on', () => {
  const compared = compareModels(buildNetwork(tree, observe([], false)));
  const { brownian, trend } = trendReference.allNine;
  expect(compared.map(({ logLikelihood }) => logLikelihood)).toEqual([
    expect.closeTo(brownian.logLikelihood, 8),
    expect.closeTo(trend.logLikelihood, 8),
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
