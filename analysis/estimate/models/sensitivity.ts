import { findMaximum } from '../../statistics/index.ts';
import { rootOf, type DatedTree } from '../../tree/index.ts';
import { correctedCriterion } from './compare-models.ts';
import { findBestRate } from '../rate/fit.ts';
import { buildNetwork } from '../passes/network.ts';
import type { Observation } from '../observation.ts';
import { pullLogLikelihood } from './pull-likelihood.ts';

/** A model that is only compared, never used for a printed value. */
export interface SensitivityModel {
  readonly name: 'lambda' | 'pull';
  /** Pagel's lambda, or the pull as a share a million years. */
  readonly parameter: number;
  readonly logLikelihood: number;
  readonly parameters: 3;
  readonly aicc: number | null;
  /** The parameter lies on the end of its range, which is no finding. */
  readonly onBound?: 'lowest' | 'highest';
}

/**
 * Tree on which Brownian motion has its shared paths scaled by lambda, tips as far from the root as before (Pagel 1999,
 * Nature 401: 877–884).
 */
export function lambdaTree(tree: DatedTree, lambda: number): DatedTree {
  const rootAgeMa = tree.ageMa[rootOf(tree)]!;
  const branchLength = tree.branchLength.map((length, node) =>
    tree.firstChild[node] === -1
      ? lambda * length + (1 - lambda) * (rootAgeMa - tree.ageMa[node]!)
      : lambda * length,
  );
  return { ...tree, branchLength };
}

/** Log-likelihood at one lambda with rate and mean at their best; NaN where the values leave no rate. */
function lambdaLogLikelihood(tree: DatedTree, observations: readonly Observation[], lambda: number): number {
  return (
    findBestRate(buildNetwork(lambdaTree(tree, lambda), observations), 'brownian', 'full')?.logLikelihood ??
    NaN
  );
}

/**
 * Log-likelihood at one pull with rate and optimum at their best: the log of the rate is looked for to 12 on both sides
 * of the one at which the values' own variance would be the stationary one.
 */
function bestPullLogLikelihood(tree: DatedTree, observations: readonly Observation[], pull: number): number {
  const means = observations.map(({ mean }) => mean);
  const centre = means.reduce((sum, mean) => sum + mean, 0) / means.length;
  const spread = means.reduce((sum, mean) => sum + (mean - centre) ** 2, 0) / means.length;
  const top = Math.log(2 * pull * spread);
  const of = (logRate: number) =>
    pullLogLikelihood(tree, observations, { pull, rate: Math.exp(logRate) }).logLikelihood;
  let best = top;
  for (let up = -12; up <= 12; up++) if (of(top + up) > of(best)) best = top + up;
  return findMaximum(of, best - 1, best + 1, 1e-9).value;
}

/**
 * Pagel's lambda and a pull to an optimum at their best, for a line on how much the choice of model matters. Empty where
 * the values leave no rate, or an exact tip lies on its fork.
 */
export function compareSensitivity(
  tree: DatedTree,
  observations: readonly Observation[],
): SensitivityModel[] {
  const depthMa =
    tree.ageMa[rootOf(tree)]! - tree.ageMa.reduce((least, age) => Math.min(least, age), Infinity);
  const lambda = largest((at) => lambdaLogLikelihood(tree, observations, at), [0, 1]);
  // half-lives from thirty times the tree's depth to a fiftieth of it
  const ends = [Math.log(Math.LN2 / (30 * depthMa)), Math.log((50 * Math.LN2) / depthMa)] as const;
  const pull = largest((at) => bestPullLogLikelihood(tree, observations, Math.exp(at)), ends);
  return [
    describe('lambda', lambda, lambda.at, observations.length),
    describe('pull', pull, Math.exp(pull.at), observations.length),
  ].filter(({ logLikelihood }) => Number.isFinite(logLikelihood));
}

interface Largest {
  readonly at: number;
  readonly value: number;
  readonly onBound?: 'lowest' | 'highest';
}

function largest(of: (at: number) => number, [low, high]: readonly [number, number]): Largest {
  const step = (high - low) / 12;
  let [best, atBest] = [low, of(low)];
  for (let k = 1; k <= 12; k++) {
    const value = of(low + k * step);
    if (value > atBest) [best, atBest] = [low + k * step, value];
  }
  const found = findMaximum(of, Math.max(low, best - step), Math.min(high, best + step), 1e-7);
  const [atLow, atHigh] = [of(low), of(high)];
  if (atLow >= found.value - 1e-7) return { at: low, value: atLow, onBound: 'lowest' };
  if (atHigh >= found.value - 1e-7) return { at: high, value: atHigh, onBound: 'highest' };
  return found;
}

function describe(
  name: SensitivityModel['name'],
  best: Largest,
  parameter: number,
  observations: number,
): SensitivityModel {
  return {
    name,
    parameter,
    logLikelihood: best.value,
    parameters: 3,
    aicc: correctedCriterion(best.value, 3, observations),
    ...(best.onBound ? { onBound: best.onBound } : {}),
  };
}
