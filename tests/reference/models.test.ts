import { compareSensitivity, correctedCriterion } from '../../analysis/estimate/index.ts';
import { compareModels } from '../../analysis/estimate/models/compare-models.ts';
import { pullLogLikelihood } from '../../analysis/estimate/models/pull-likelihood.ts';
import { lambdaTree } from '../../analysis/estimate/models/sensitivity.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { beliefOf } from '../../analysis/estimate/passes/per-rate.ts';
import { findBestRate } from '../../analysis/estimate/rate/fit.ts';
import { findMaximum } from '../../analysis/statistics/index.ts';
import type { DatedTree } from '../../analysis/tree/index.ts';
import { holdToAccount } from './account.ts';
import { coefficients, treeOfNineTips } from './brownian-account.ts';
import { nineTipsTree as tree, observeNineTips } from './nine-tips-tree.ts';
import { knownAtRate } from './one-rate.ts';
import models from './values/nine-tips-models.json' with { type: 'json' };

const observations = observeNineTips([], false);
const compared = compareModels(buildNetwork(tree, observations));
const [lambda, pull] = compareSensitivity(tree, observations);

/** Brownian motion on a tree at its full likelihood: mean of the root, rate, likelihood. */
function brownianOn(own: DatedTree) {
  const network = buildNetwork(own, observations);
  const { rate, logLikelihood } = findBestRate(network, 'brownian', 'full')!;
  const root = { node: network.parent.length - 1, upMa: 0 };
  return { ll: logLikelihood, s2: rate, mean: beliefOf(knownAtRate(network, 'brownian', rate), root).mean };
}

/** One pull with its rate and its optimum at their best. */
function pulledBy(share: number) {
  const at = (logRate: number) =>
    pullLogLikelihood(tree, observations, { pull: share, rate: Math.exp(logRate) });
  const best = findMaximum((logRate) => at(logRate).logLikelihood, -8, 8, 1e-9);
  return { ll: best.value, s2: Math.exp(best.at), theta: at(best.at).optimum };
}

/** Values that have nothing to do with each other: a pull so strong that nothing of a relative is left. */
const strangers = pulledBy(1e3);

const criteria = {
  BM: compared[0]!.aicc!,
  trend: compared[1]!.aicc!,
  lambda: lambda!.aicc!,
  OU_stationaryRoot: pull!.aicc!,
  whiteNoise: correctedCriterion(strangers.ll, 2, 9)!,
};

function weightsOf(all: typeof criteria) {
  const least = Math.min(...Object.values(all));
  const raw = Object.entries(all).map(([name, aicc]) => [name, Math.exp((least - aicc) / 2)] as const);
  const sum = raw.reduce((total, [, weight]) => total + weight, 0);
  return Object.fromEntries(raw.map(([name, weight]) => [name, weight / sum]));
}

const anotherRoot =
  'a pull whose root is fixed is another model; ours draws the root from the stationary distribution, and the traps hold that the two differ';

holdToAccount({
  name: 'models of the nine tips',
  values: models,
  given: ['newick', 'rootAge', 'tips', 'y', 'se', 'grid/*/*/lambda', 'grid/OU_stationary/*/alpha'],
  described: {
    'models/OU_fixedRootAtTheta': anotherRoot,
    'models/OU_fixedRootFree': anotherRoot,
    'grid/OU_fixedRootAtTheta': anotherRoot,
  },
  checks: [
    { claim: 'paths, times and ages of the tree', within: 1e-15, answer: treeOfNineTips },
    {
      claim: 'largest likelihoods, numbers of parameters and criteria',
      at: 'models',
      within: 1e-9,
      answer: () => ({
        BM: { ll: compared[0]!.logLikelihood, k: compared[0]!.parameters, AICc: criteria.BM },
        trend: { ll: compared[1]!.logLikelihood, k: compared[1]!.parameters, AICc: criteria.trend },
        lambda: { ll: lambda!.logLikelihood, k: lambda!.parameters, AICc: criteria.lambda },
        OU_stationaryRoot: { ll: pull!.logLikelihood, k: pull!.parameters, AICc: criteria.OU_stationaryRoot },
        whiteNoise: { ll: strangers.ll, k: 2, AICc: criteria.whiteNoise },
      }),
    },
    {
      claim: 'parameters at the largest likelihoods',
      at: 'models',
      within: 1e-6,
      answer: () => {
        const [plain, best] = [brownianOn(tree), pulledBy(pull!.parameter)];
        const rate = compared[1]!.rate;
        const line = coefficients(buildNetwork(tree, observations), 'trend', rate);
        const par = { mean: plain.mean, s2: plain.s2 };
        return {
          BM: { par },
          trend: { par: { root: line.root, mu: line.slope, s2: rate } },
          lambda: { par: { ...par, lambda: lambda!.parameter } },
          OU_stationaryRoot: { par: { alpha: pull!.parameter, theta: best.theta, s2: best.s2 } },
          whiteNoise: { par: { mean: strangers.theta, s2: strangers.s2 / 2e3 } },
        };
      },
    },
    { claim: 'weights of evidence', at: 'AICcWeights', within: 1e-8, answer: () => weightsOf(criteria) },
    {
      claim: 'likelihoods along lambda and along the pull',
      at: 'grid',
      within: 1e-10,
      answer: () => ({
        lambda: models.grid.lambda.map((row) => ({ ll: brownianOn(lambdaTree(tree, row.lambda)).ll })),
        OU_stationary: models.grid.OU_stationary.map(({ alpha }) => ({ ll: pulledBy(alpha).ll })),
      }),
    },
    {
      claim: 'means, optima and rates along lambda and along the pull',
      at: 'grid',
      within: 1e-6,
      answer: () => ({
        lambda: models.grid.lambda.map((row) => brownianOn(lambdaTree(tree, row.lambda))),
        OU_stationary: models.grid.OU_stationary.map(({ alpha }) => pulledBy(alpha)),
      }),
    },
  ],
});
