import { tipsOf, type DatedTree } from '../tree/index.ts';
import { findBrownianFit, type BrownianFit } from './fit.ts';
import { leaveOneOut, type LeftOut } from './leave-one-out.ts';
import { buildNetwork } from './network.ts';
import type { Observation } from './observation.ts';
import { estimatePlaces, type ValueEstimate } from './posterior.ts';
import { rateQuantile } from './rate-grid.ts';
import { relativeWeights, type RelativeWeight } from './relative-weights.ts';
import { findTreeBlindInterval } from './tree-blind.ts';

/** What `estimateTrait` works on; every number is on the scale of the model (plain, log or logit). */
export interface TraitQuestion {
  readonly tree: DatedTree;
  /** Measured taxa of the tree: mean and sampling variance of the mean. Taxa not named here are estimated. */
  readonly observations: readonly Observation[];
  /** Probability that an interval holds; 0.95 if left out. */
  readonly level?: number;
  /** Whether each measured taxon is also estimated from the others. Quadratic in taxa. */
  readonly leaveOneOut?: boolean;
}

/** Why there is no estimate, as a code. */
export type NoEstimate = 'fewer-than-four' | 'exact-values-equal';

/** Estimate of one node of the tree; `node` is its index in the tree. */
export interface NodeEstimate extends ValueEstimate {
  readonly node: number;
  readonly label: string;
  readonly observed: boolean;
  /** Weights of the observed taxa, largest first, adding up to 1; for tips without an observation only. */
  readonly relatives?: readonly RelativeWeight[];
}

/** Facts of the fitted model; rates in squared units of the scale a million years. */
export interface ModelFacts {
  readonly name: 'brownian';
  /** Degrees of freedom of the rate: observations less one. */
  readonly degreesOfFreedom: number;
  readonly rateMedian: number;
  readonly rateInterval: readonly [number, number];
  /** Rate of largest restricted likelihood; 0 when that lies on the bound of no change. */
  readonly rateReml: number;
  readonly rateMl: number;
  readonly logLikelihoodReml: number;
  readonly logLikelihoodMl: number;
}

/** Answer of `estimateTrait`. */
export type TraitAnswer =
  | { readonly estimated: false; readonly reason: NoEstimate }
  | {
      readonly estimated: true;
      readonly model: ModelFacts;
      /** One entry a node of the tree, in its order: tips and forks. */
      readonly nodes: readonly NodeEstimate[];
      readonly leaveOneOut: readonly LeftOut[];
      /** Interval for one more taxon without a tree; an estimate no narrower than this is not worth printing. */
      readonly treeBlind: readonly [number, number];
    };

/**
 * Estimates a trait at every tip and fork of a dated tree by Brownian motion from what was measured: median, interval
 * and standard deviation with sampling variance included and the rate integrated, exact and without simulation.
 * With fewer than four observations, or exact values that are all equal, it says why it does not. Throws for
 * observations outside the tree, doubled, or exact twice at one point in time.
 */
export function estimateTrait(question: TraitQuestion): TraitAnswer {
  const { tree, observations, level = 0.95 } = question;
  const network = buildNetwork(tree, observations);
  if (observations.length < 4) return { estimated: false, reason: 'fewer-than-four' };
  const fit = findBrownianFit(network);
  if (!fit) return { estimated: false, reason: 'exact-values-equal' };
  const means = observations.map((observation) => observation.mean);
  return {
    estimated: true,
    model: modelFacts(fit, level),
    nodes: nodeEstimates(tree, fit, level),
    leaveOneOut: question.leaveOneOut ? leaveOneOut(tree, observations, level) : [],
    treeBlind: findTreeBlindInterval(means, level)!,
  };
}

function modelFacts(fit: BrownianFit, level: number): ModelFacts {
  return {
    name: 'brownian',
    degreesOfFreedom: fit.network.observations.length - 1,
    rateMedian: rateQuantile(fit.grid, 0.5),
    rateInterval: [rateQuantile(fit.grid, (1 - level) / 2), rateQuantile(fit.grid, (1 + level) / 2)],
    rateReml: fit.rateReml,
    rateMl: fit.rateMl,
    logLikelihoodReml: fit.logLikelihoodReml,
    logLikelihoodMl: fit.logLikelihoodMl,
  };
}

function nodeEstimates(tree: DatedTree, fit: BrownianFit, level: number): NodeEstimate[] {
  const { network } = fit;
  const places = Array.from({ length: network.parent.length }, (_, node) => ({ node, upMa: 0 }));
  const values = estimatePlaces(fit, places, level);
  const observed = new Set(network.observations.map((observation) => observation.taxon));
  const tips = new Set(tipsOf(tree));
  return tree.label.map((label, node) => {
    const here = network.nodeOf[node]!;
    const known = tips.has(node) && observed.has(label);
    const estimate = { node, label, observed: known, ...values[here]! };
    return tips.has(node) && !known ? { ...estimate, relatives: relativeWeights(fit, here) } : estimate;
  });
}
