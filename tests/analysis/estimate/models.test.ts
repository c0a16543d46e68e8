import { expect, test } from 'vitest';
import { chooseModel, correctedCriterion } from '../../../analysis/estimate/models/compare-models.ts';
import { estimateTrait } from '../../../analysis/estimate/index.ts';
import { findFit } from '../../../analysis/estimate/rate/fit.ts';
import { makeColumnMessages } from '../../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { passUpTrend, timeNetwork } from '../../../analysis/estimate/passes/pass-up-trend.ts';
import { pullLogLikelihood } from '../../../analysis/estimate/models/pull-likelihood.ts';
import { compareSensitivity } from '../../../analysis/estimate/models/sensitivity.ts';
import { makeTrendRoom, trendInformation } from '../../../analysis/estimate/rate/trend-information.ts';
import { findMaximum } from '../../../analysis/statistics/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import models from '../../reference/values/nine-tips-models.json' with { type: 'json' };
import trend from '../../reference/values/nine-tips-trend.json' with { type: 'json' };

test('without sampling variance a trend has the exact t interval with two degrees of freedom less', () => {
  const { prediction, trendPerMyr, coefCov_atREML } = trend.cases[0]!;
  const [known, slopeError] = [prediction[0]!, Math.sqrt(coefCov_atREML[1]![1]!)];
  const answer = estimateTrait({ tree, observations: observe(['G'], false), model: 'trend' });
  if (!answer.estimated) throw new Error(answer.reason);
  const value = answer.nodes[tree.label.indexOf('G')]!;
  expect(answer.model).toMatchObject({ name: 'trend', degreesOfFreedom: 6 });
  expect(value.median).toBeCloseTo(known.mean, 8);
  expect(value.interval[0]).toBeCloseTo(known.int95_t[0]!, 7);
  expect(value.interval[1]).toBeCloseTo(known.int95_t[1]!, 7);
  expect(answer.model.slope!.median).toBeCloseTo(trendPerMyr, 8);
  expect(answer.model.slope!.interval[1]).toBeCloseTo(trendPerMyr + known.t975 * slopeError, 8);
  expect(value.relatives!.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
});

test('the trend takes one degree of freedom from the information on the rate', () => {
  const network = buildNetwork(tree, observe(['G'], false));
  const term = trendInformation(network, timeNetwork(network), 0.01, makeTrendRoom(network.parent.length));
  expect(term).toBeCloseTo(-1, 12);
});

test('the information of a trend with sampling variance is that of numerical differences', () => {
  const network = buildNetwork(tree, observe(['G'], true));
  const time = timeNetwork(network);
  const room = makeColumnMessages(network.parent.length);
  const logSquares = (logRate: number) =>
    -Math.log(passUpTrend(network, time, Math.exp(logRate), room).slopeVariance);
  for (const logRate of [-9, -7, -5.5, -4]) {
    const h = 1e-3;
    const [less, here, more] = [logSquares(logRate - h), logSquares(logRate), logSquares(logRate + h)];
    const expected = (more - less) / (2 * h) - (more - 2 * here + less) / (h * h);
    const term = trendInformation(network, time, Math.exp(logRate), makeTrendRoom(network.parent.length));
    expect(term).toBeCloseTo(expected, 5);
  }
});

test('the trend is used only where its criterion is lower by two', () => {
  const pair = (difference: number) =>
    [
      { name: 'brownian', rate: 1, logLikelihood: 0, parameters: 2, aicc: 10 },
      { name: 'trend', rate: 1, logLikelihood: 0, parameters: 3, aicc: 10 - difference },
    ] as const;
  expect(chooseModel(pair(1.99))).toBe('brownian');
  expect(chooseModel(pair(2))).toBe('trend');
  expect(chooseModel([])).toBe('brownian');
  expect(correctedCriterion(0, 3, 4)).toBeNull();
  expect(correctedCriterion(0, 2, 4)).toBe(16);
});

test('auto takes the trend on the reference values, and Brownian motion once time is shuffled', () => {
  const auto = estimateTrait({ tree, observations: observe(['G'], true), model: 'auto' });
  if (!auto.estimated) throw new Error(auto.reason);
  expect(auto.model.name).toBe('trend');
  const values = [2.6, 2.5, 2.7, 2.55, 2.65, 2.6, 2.5, 2.7];
  const flat = observe(['G'], true).map((one, index) => ({ ...one, mean: values[index]! }));
  const other = estimateTrait({ tree, observations: flat, model: 'auto' });
  if (!other.estimated) throw new Error(other.reason);
  expect(other.model.name).toBe('brownian');
});

test('a pull to nothing, from a free root to an optimum without end, is a trend', () => {
  const observations = observe([], false);
  const likeliest = (pull: number) =>
    findMaximum(
      (log) =>
        pullLogLikelihood(tree, observations, { pull, rate: Math.exp(log), root: 'free' }).logLikelihood,
      -12,
      0,
      1e-9,
    ).value;
  const known = models.models.trend.ll;
  // what is left between them goes with the pull
  const [weak, weaker] = [likeliest(1e-6), likeliest(1e-7)];
  expect(weak - known).toBeCloseTo(1.59e-4, 6);
  expect(weaker - known).toBeCloseTo(1.59e-5, 7);
});

test('the likelihood of a pull is even to thirteen digits, so that its top is found and not met by luck', () => {
  const observations = observe([], false);
  for (const pull of [1e-2, 1e-4, 1e-6]) {
    const along = Array.from(
      { length: 100 },
      (_, step) =>
        pullLogLikelihood(tree, observations, { pull: pull * (1 + step * 1e-7), rate: 0.004 }).logLikelihood,
    );
    for (const [step, here] of along.entries()) {
      if (step === 0 || step === along.length - 1) continue;
      expect(Math.abs(along[step - 1]! - 2 * here + along[step + 1]!)).toBeLessThan(3e-13);
    }
  }
});

test('a trend that no time can tell is answered, not estimated', () => {
  const level = dateAsGiven(parseNewick('(((a:1,b:1):1,c:2):1,(d:2,e:2):1);'));
  const observations = ['a', 'b', 'c', 'd', 'e'].map((taxon, index) => ({
    taxon,
    mean: index,
    variance: 0.1,
  }));
  expect(estimateTrait({ tree: level, observations, model: 'trend' })).toEqual({
    estimated: false,
    reason: 'trend-not-told',
  });
  const auto = estimateTrait({ tree: level, observations, model: 'auto' });
  expect(auto).toMatchObject({ estimated: true, model: { name: 'brownian' } });
  expect(findFit(buildNetwork(level, observations), 'trend')).toBeUndefined();
  expect(
    estimateTrait({ tree, observations: observe(['A', 'B', 'C', 'D', 'E'], true), model: 'trend' }),
  ).toEqual({
    estimated: false,
    reason: 'fewer-than-five-for-trend',
  });
});

test('a parameter on the end of its range is said to be there', () => {
  const [lambda, pull] = compareSensitivity(tree, observe([], false));
  expect(lambda).toMatchObject({ name: 'lambda', parameter: 1, onBound: 'highest' });
  expect(pull).toMatchObject({ name: 'pull' });
  expect(pull).not.toHaveProperty('onBound');
});
