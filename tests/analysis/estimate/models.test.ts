import { expect, test } from 'vitest';
import {
  chooseModel,
  compareModels,
  correctedCriterion,
} from '../../../analysis/estimate/models/compare-models.ts';
import { estimateTrait } from '../../../analysis/estimate/index.ts';
import { findBestRate, findFit } from '../../../analysis/estimate/rate/fit.ts';
import { makeMessages } from '../../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import {
  makeTimeMessages,
  passUpTrend,
  timeNetwork,
} from '../../../analysis/estimate/passes/pass-up-trend.ts';
import { pullLogLikelihood } from '../../../analysis/estimate/models/pull-likelihood.ts';
import { readAtRates } from '../../../analysis/estimate/passes/per-rate.ts';
import { readRelativeWeights } from '../../../analysis/estimate/relative-weights.ts';
import {
  bestPullLogLikelihood,
  compareSensitivity,
  lambdaLogLikelihood,
} from '../../../analysis/estimate/models/sensitivity.ts';
import { makeTrendRoom, trendInformation } from '../../../analysis/estimate/rate/trend-information.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import { trendReference as known } from '../../reference/nine-tips-trend.ts';

test.each(known.withoutG)('a trend without G equals generalised least squares, error $withError', (row) => {
  const network = buildNetwork(tree, observe(['G'], row.withError));
  const [messages, time] = [makeMessages(network.parent.length), timeNetwork(network)];
  const pass = passUpTrend(network, time, row.rateReml, messages, makeTimeMessages(messages));
  expect(pass.restricted).toBeCloseTo(row.logLikelihoodReml, 9);
  expect(pass.slope).toBeCloseTo(row.slope, 11);
  expect(Math.sqrt(pass.slopeVariance)).toBeCloseTo(row.slopeError, 9);
  const restricted = findBestRate(network, 'trend', 'restricted')!;
  const full = findBestRate(network, 'trend', 'full')!;
  expect(restricted.rate / row.rateReml).toBeCloseTo(1, 5);
  expect(full.rate / row.rateMl).toBeCloseTo(1, 5);
  expect(full.logLikelihood).toBeCloseTo(row.logLikelihoodMl, 9);
  expect(correctedCriterion(full.logLikelihood, 3, 8)).toBeCloseTo(row.aicc, 8);
  const grid = {
    rates: Float64Array.of(row.rateReml),
    weights: Float64Array.of(1),
    centre: 0,
    width: 1,
    firstStep: 0,
    step: 1,
  };
  const fit = { model: 'trend', network, grid, effort: 'full' } as const;
  const [weights] = readAtRates(fit, readRelativeWeights(fit, [network.nodeOf[tree.label.indexOf('G')]!]));
  for (const { taxon, weight } of weights!)
    expect(weight).toBeCloseTo(row.weights[taxon as keyof typeof row.weights], 9);
});

test('without sampling variance a trend has the exact t interval with two degrees of freedom less', () => {
  const row = known.withoutG[0];
  const answer = estimateTrait({ tree, observations: observe(['G'], false), model: 'trend' });
  if (!answer.estimated) throw new Error(answer.reason);
  const value = answer.nodes[tree.label.indexOf('G')]!;
  expect(answer.model).toMatchObject({ name: 'trend', degreesOfFreedom: 6 });
  expect(value.median).toBeCloseTo(row.mean, 8);
  expect(value.interval[0]).toBeCloseTo(row.low, 7);
  expect(value.interval[1]).toBeCloseTo(row.high, 7);
  expect(answer.model.slope!.median).toBeCloseTo(row.slope, 8);
  expect(answer.model.slope!.interval[1]).toBeCloseTo(row.slope + 2.4469118511449692 * row.slopeError, 8);
  expect(value.relatives!.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
});

test('the trend takes one degree of freedom from the information on the rate', () => {
  const network = buildNetwork(tree, observe(['G'], false));
  const term = trendInformation(network, timeNetwork(network), 0.01, makeTrendRoom(network.parent.length));
  expect(term).toBeCloseTo(-1, 12);
});

test('the information of a trend with sampling variance is that of numerical differences', () => {
  const network = buildNetwork(tree, observe(['G'], true));
  const [messages, time] = [makeMessages(network.parent.length), timeNetwork(network)];
  const logSquares = (logRate: number) =>
    -Math.log(
      passUpTrend(network, time, Math.exp(logRate), messages, makeTimeMessages(messages)).slopeVariance,
    );
  for (const logRate of [-9, -7, -5.5, -4]) {
    const h = 1e-3;
    const [less, here, more] = [logSquares(logRate - h), logSquares(logRate), logSquares(logRate + h)];
    const expected = (more - less) / (2 * h) - (more - 2 * here + less) / (h * h);
    const term = trendInformation(network, time, Math.exp(logRate), makeTrendRoom(network.parent.length));
    expect(term).toBeCloseTo(expected, 5);
  }
});

test('full likelihoods and the corrected criterion of all nine are those of the reference', () => {
  const compared = compareModels(buildNetwork(tree, observe([], false)));
  for (const model of compared) {
    expect(model.logLikelihood).toBeCloseTo(known.allNine[model.name].logLikelihood, 9);
    expect(model.aicc).toBeCloseTo(known.allNine[model.name].aicc, 8);
  }
  expect(chooseModel(compared)).toBe('trend');
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

test.each(known.allNine.lambda)(
  'lambda of $lambda scales shared paths and keeps the tips',
  ({ lambda, logLikelihood }) => {
    expect(lambdaLogLikelihood(tree, observe([], false), lambda)).toBeCloseTo(logLikelihood, 8);
  },
);

test.each(known.allNine.pull)(
  'a pull of $pull has the likelihood of its covariance matrix',
  ({ pull, logLikelihood, optimum, rate }) => {
    const observations = observe([], false);
    expect(bestPullLogLikelihood(tree, observations, pull)).toBeCloseTo(logLikelihood, 8);
    expect(pullLogLikelihood(tree, observations, { pull, rate }).optimum).toBeCloseTo(optimum, 9);
  },
);

test('a parameter on the end of its range is said to be there', () => {
  const [lambda, pull] = compareSensitivity(tree, observe([], false));
  expect(lambda).toMatchObject({ name: 'lambda', parameter: 1, onBound: 'highest' });
  expect(pull!.parameter).toBeCloseTo(known.allNine.bestPull.pull, 5);
  expect(pull!.logLikelihood).toBeCloseTo(known.allNine.bestPull.logLikelihood, 8);
  expect(pull).not.toHaveProperty('onBound');
});
