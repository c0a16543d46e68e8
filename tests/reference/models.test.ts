import { compareSensitivity, correctedCriterion } from '../../analysis/estimate/index.ts';
import { compareModels } from '../../analysis/estimate/models/compare-models.ts';
import { pullLogLikelihood, type PullRoot } from '../../analysis/estimate/models/pull-likelihood.ts';
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

/** One pull with its rate, its optimum and a free root at their best. */
function pulledBy(share: number, root: PullRoot = 'drawn') {
  const at = (logRate: number) =>
    pullLogLikelihood(tree, observations, { pull: share, rate: Math.exp(logRate), root });
  const best = findMaximum((logRate) => at(logRate).logLikelihood, -9, 8, 1e-9);
  const { optimum, rootValue } = at(best.at);
  return { ll: best.value, s2: Math.exp(best.at), theta: optimum, rootValue };
}

/** Without what the file has no place for. */
function known({ ll, s2, theta }: ReturnType<typeof pulledBy>) {
  return { ll, s2, theta };
}

/** The pull at which a free root is likeliest. */
const freePull = Math.exp(findMaximum((log) => pulledBy(Math.exp(log), 'free').ll, -6, -3, 1e-9).at);
/** The weakest pull that the reference tries: with the root on the optimum the likelihood grows all the way down to none. */
const weakest = pulledBy(models.models.OU_fixedRootAtTheta.par.alpha, 'on-optimum');

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

holdToAccount({
  name: 'models of the nine tips',
  values: models,
  given: [
    'newick',
    'rootAge',
    'tips',
    'y',
    'se',
    'grid/*/*/lambda',
    'grid/OU_stationary/*/alpha',
    'grid/OU_fixedRootAtTheta/*/alpha',
    'models/OU_fixedRootAtTheta/par/alpha',
  ],
  described: { 'models/OU_fixedRootFree/par/note': 'what the two values after it are' },
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
        OU_fixedRootAtTheta: { ll: weakest.ll, k: 3, AICc: correctedCriterion(weakest.ll, 3, 9) },
        OU_fixedRootFree: {
          ll: pulledBy(freePull, 'free').ll,
          k: 4,
          AICc: correctedCriterion(pulledBy(freePull, 'free').ll, 4, 9),
        },
      }),
    },
    {
      claim: 'parameters at the largest likelihoods',
      at: 'models',
      within: 1e-6,
      answer: () => {
        const [plain, best] = [brownianOn(tree), pulledBy(pull!.parameter)];
        const free = pulledBy(freePull, 'free');
        const rate = compared[1]!.rate;
        const line = coefficients(buildNetwork(tree, observations), 'trend', rate);
        const par = { mean: plain.mean, s2: plain.s2 };
        return {
          BM: { par },
          trend: { par: { root: line.root, mu: line.slope, s2: rate } },
          lambda: { par: { ...par, lambda: lambda!.parameter } },
          OU_stationaryRoot: { par: { alpha: pull!.parameter, theta: best.theta, s2: best.s2 } },
          whiteNoise: { par: { mean: strangers.theta, s2: strangers.s2 / 2e3 } },
          OU_fixedRootAtTheta: { par: { theta: weakest.theta, s2: weakest.s2 } },
          OU_fixedRootFree: { par: { alpha: freePull, theta_x0: [free.theta, free.rootValue] } },
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
        OU_fixedRootAtTheta: models.grid.OU_fixedRootAtTheta.map(({ alpha }) => ({
          ll: pulledBy(alpha, 'on-optimum').ll,
        })),
      }),
    },
    {
      claim: 'means, optima and rates along lambda and along the pull',
      at: 'grid',
      within: 1e-6,
      answer: () => ({
        lambda: models.grid.lambda.map((row) => brownianOn(lambdaTree(tree, row.lambda))),
        OU_stationary: models.grid.OU_stationary.map(({ alpha }) => known(pulledBy(alpha))),
        OU_fixedRootAtTheta: models.grid.OU_fixedRootAtTheta.map(({ alpha }) =>
          known(pulledBy(alpha, 'on-optimum')),
        ),
      }),
    },
  ],
});
