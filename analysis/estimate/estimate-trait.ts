import { requireTipsByLabel, type DatedTree } from '../tree/index.ts';
import { chooseModel, compareModels, type ComparedModel } from './models/compare-models.ts';
import { readNodes, type LimitFacts } from './estimate-nodes.ts';
import { findFit, type Fit, type ModelName } from './rate/fit.ts';
import { leaveOneOut } from './leave-one-out.ts';
import { boundsOf, type LimitObservation, type PlacedLimit } from './limits/limit-observation.ts';
import { modelFacts } from './model-facts.ts';
import { buildNetwork, type Network } from './passes/network.ts';
import { both, readAtRates } from './passes/per-rate.ts';
import type { Observation } from './observation.ts';
import { readRelativeWeights } from './relative-weights.ts';
import type { NodeEstimate, NoEstimate, TraitAnswer } from './trait-answer.ts';
import { findTreeBlindInterval } from './tree-blind.ts';

/** What `estimateTrait` works on; every number is on the scale of the model (plain, log or logit). */
export interface TraitQuestion {
  readonly tree: DatedTree;
  /** Measured taxa of the tree: mean and sampling variance of the mean. Taxa not named here are estimated. */
  readonly observations: readonly Observation[];
  /** Limits of broken specimens of taxa without an observation; those of measured taxa are passed over. */
  readonly limits?: readonly LimitObservation[];
  /** Probability that an interval holds; 0.95 if left out. */
  readonly level?: number;
  /** 'brownian' if left out; 'auto' takes the trend where its corrected criterion is lower by 2 or more. */
  readonly model?: ModelName | 'auto';
  /** Tips to estimate; every tip and fork if left out. Few are quick to work out again, as where a visitor hides a find. */
  readonly only?: readonly string[];
  /** Whether each measured taxon is also estimated from the others. Quadratic in taxa. */
  readonly leaveOneOut?: boolean;
  /** Key of the random numbers, which only several limits need; 1 if left out. */
  readonly seed?: string | number;
}

/**
 * Estimates a trait at every tip and fork of a dated tree from what was measured, by Brownian motion or with a trend:
 * median, interval and standard deviation with sampling variance included and the rate integrated, without simulation
 * unless there are several limits. With fewer than four observations (five for a trend asked for), exact values that are all
 * equal, or a trend that no time can tell or that leaves no scatter, it says why it does not. Throws for observations or limits outside the tree,
 * doubled, or exact twice at one point in time.
 */
export function estimateTrait(question: TraitQuestion): TraitAnswer {
  const { tree, observations, level = 0.95, seed = 1, limits = [] } = question;
  const network = buildNetwork(tree, observations);
  const placed = placeLimits(tree, network, limits);
  if (observations.length < 4) return { estimated: false, reason: 'fewer-than-four' };
  const compared = compareModels(network);
  const found = findFitAsked(network, compared, question.model ?? 'brownian');
  if ('reason' in found) return { estimated: false, reason: found.reason };
  const { fit } = found;
  const { nodes, facts } = estimateWanted(tree, fit, question.only, placed, { level, seed });
  const used = placed.map(({ limit }) => limit);
  return {
    estimated: true,
    model: modelFacts(fit, level, compared),
    nodes,
    limits: facts,
    leaveOneOut: question.leaveOneOut
      ? leaveOneOut(tree, observations, { level, seed, model: fit.model, limits: used })
      : [],
    treeBlind: findTreeBlindInterval(
      observations.map(({ mean }) => mean),
      level,
    )!,
  };
}

/** What relatives say of some tips, by a model that is settled. */
export interface TipEstimates {
  readonly nodes: readonly NodeEstimate[];
  /** Interval for one more taxon without a tree. */
  readonly treeBlind: readonly [number, number];
}

/**
 * The estimates of some tips by one model, as `estimateTrait` gives them to the last digit, without the facts and comparisons of
 * models: what a page asks again and again while a visitor hides finds. Undefined where `estimateTrait` says that it cannot.
 */
export function estimateTips(
  question: TraitQuestion & { readonly model: ModelName; readonly only: readonly string[] },
): TipEstimates | undefined {
  const { tree, observations, level = 0.95, seed = 1, limits = [], model, only } = question;
  if (observations.length < (model === 'trend' ? 5 : 4)) return undefined;
  if (model === 'trend' && observations.every(({ variance }) => variance === 0)) {
    // exact values may lie on the trend to their last digits, which only the comparison tells
    const answer = estimateTrait(question);
    return answer.estimated ? answer : undefined;
  }
  const network = buildNetwork(tree, observations);
  const fit = findFit(network, model);
  if (!fit) return undefined;
  const { nodes } = estimateWanted(tree, fit, only, placeLimits(tree, network, limits), { level, seed });
  const means = observations.map(({ mean }) => mean);
  return { nodes, treeBlind: findTreeBlindInterval(means, level)! };
}

/** Estimates of the nodes wanted, with the limits in, and how these entered. */
function estimateWanted(
  tree: DatedTree,
  fit: Fit,
  only: readonly string[] | undefined,
  placed: readonly PlacedLimit[],
  options: { readonly level: number; readonly seed: string | number },
): { readonly nodes: NodeEstimate[]; readonly facts: LimitFacts } {
  const { network } = fit;
  const wanted = wantedNodes(tree, only);
  const at = (nodes: readonly number[]) => nodes.map((node) => network.nodeOf[node]!);
  const measured = new Set(network.observations.map(({ taxon }) => taxon));
  const isObserved = (node: number) => tree.firstChild[node] === -1 && measured.has(tree.label[node]!);
  const open = wanted.filter((node) => tree.firstChild[node] === -1 && !isObserved(node));
  const [{ values, facts }, weights] = readAtRates(
    fit,
    both(readNodes(fit, at(wanted), placed, options), readRelativeWeights(fit, at(open))),
  );
  const relativesOf = new Map(open.map((node, index) => [node, weights[index]!]));
  const nodes = wanted.map((node, index) => {
    const estimate = { node, label: tree.label[node]!, observed: isObserved(node), ...values[index]! };
    const relatives = relativesOf.get(node);
    return relatives ? { ...estimate, relatives } : estimate;
  });
  return { nodes, facts };
}

/** The fit of the model asked for, or why there is none; 'auto' falls back on Brownian motion. */
function findFitAsked(
  network: Network,
  compared: readonly ComparedModel[],
  asked: ModelName | 'auto',
): { readonly fit: Fit } | { readonly reason: NoEstimate } {
  if (compared.length === 0) return { reason: 'exact-values-equal' };
  const model = asked === 'auto' ? chooseModel(compared) : asked;
  if (model === 'trend') {
    if (!compared.some(({ name }) => name === 'trend')) return { reason: 'trend-not-told' };
    if (network.observations.length < 5) return { reason: 'fewer-than-five-for-trend' };
  }
  const fit = leavesNoScatter(network, compared, model) ? undefined : findFit(network, model);
  if (fit) return { fit };
  if (model === 'brownian') return { reason: 'exact-values-equal' };
  return asked === 'auto' ? findFitAsked(network, compared, 'brownian') : { reason: 'trend-without-scatter' };
}

/** Whether exact values lie on the trend to their last digits, so that the rate is only rounding. */
function leavesNoScatter(network: Network, compared: readonly ComparedModel[], model: ModelName): boolean {
  const exact = network.observations.every(({ variance }) => variance === 0);
  return (
    model === 'trend' &&
    exact &&
    compared.some(({ name, note }) => name === 'trend' && note === 'rate-at-zero')
  );
}

/** Limits of taxa without an observation, each at its taxon's node. Throws for a taxon outside the tree. */
function placeLimits(tree: DatedTree, network: Network, limits: readonly LimitObservation[]): PlacedLimit[] {
  const tips = requireTipsByLabel(tree);
  const observed = new Set(network.observations.map(({ taxon }) => taxon));
  return limits.flatMap((limit) => {
    const tip = tips.get(limit.taxon);
    if (tip === undefined) throw new Error(`"${limit.taxon}" has a limit but is not a tip of the tree`);
    boundsOf(limit);
    const at = network.nodeOf[tip]!;
    return observed.has(limit.taxon) || network.ownPrecision[at] === Infinity ? [] : [{ limit, at }];
  });
}

/** Nodes of the tree to estimate. Throws for a name that is no tip. */
function wantedNodes(tree: DatedTree, only: readonly string[] | undefined): number[] {
  if (!only) return Array.from(tree.parent, (_, node) => node);
  const tips = requireTipsByLabel(tree);
  return only.map((label) => {
    const tip = tips.get(label);
    if (tip === undefined) throw new Error(`"${label}" is to be estimated but is not a tip of the tree`);
    return tip;
  });
}
