import { findMaximum } from '../../statistics/index.ts';
import { scratchFor, type Messages } from '../passes/messages.ts';
import type { Network } from '../passes/network.ts';
import { passUp } from '../passes/pass-up.ts';
import { passUpTrend, timeNetwork } from '../passes/pass-up-trend.ts';
import { contrastRate } from '../passes/contrast-rate.ts';
import {
  findRateGrid,
  type Effort,
  type LogRateWeight,
  type RateGrid,
  type RateSearch,
} from './rate-grid.ts';
import { makeInformationRoom, rateInformation } from './rate-information.ts';
import { makeTrendRoom, trendInformation } from './trend-information.ts';

/** How a trait is thought to move: at random, or at random about a steady trend. */
export type ModelName = 'brownian' | 'trend';

/** A model fitted to a network, the rate integrated. Rates are in squared trait units a million years. */
export interface Fit {
  readonly model: ModelName;
  readonly network: Network;
  readonly grid: RateGrid;
  readonly effort: Effort;
}

/** Rate of largest likelihood, 0 where the likelihood grows all the way down to no change, and that likelihood. */
export interface BestRate {
  readonly rate: number;
  readonly logLikelihood: number;
}

/** How far below the data's own scale, in ln(rate), a rate is nothing beside any sampling variance. */
const noRateDepth = 45;

/**
 * Fits a model, the rate integrated; undefined where the values leave no rate because exact ones are all equal, or
 * because no time separates what was observed and a trend cannot be told.
 */
export function findFit(network: Network, model: ModelName, effort: Effort = 'full'): Fit | undefined {
  if (model === 'trend' && !hasTimes(network)) return undefined;
  const search = findRateSearch(network);
  if (search === undefined) return undefined;
  const grid = findRateGrid(
    model === 'brownian' ? brownianWeight(network) : columnWeight(network, timeNetwork(network)),
    search,
    effort,
  );
  return grid && { model, network, grid, effort };
}

/** Whether observations stand at different times from the root, which a trend needs. */
export function hasTimes(network: Network): boolean {
  let first = Infinity;
  let last = 0;
  for (const node of network.observedAt) {
    first = Math.min(first, network.sinceRootMa[node]!);
    last = Math.max(last, network.sinceRootMa[node]!);
  }
  return last - first > 1e-9 * last;
}

/**
 * Rate of largest restricted or full likelihood, in squared trait units a million years; undefined where the values leave
 * no rate.
 */
export function findBestRate(
  network: Network,
  model: ModelName,
  kind: 'restricted' | 'full',
  effort: Effort = 'full',
): BestRate | undefined {
  const search = findRateSearch(network);
  if (search === undefined) return undefined;
  const { top, depth } = search;
  const of = logLikelihoodOf(network, model, kind);
  const bottom = of(top - noRateDepth);
  let best = top;
  let atBest = -Infinity;
  for (let down = -4; down < Math.min(30, depth); down += 1) {
    const value = of(top - down);
    if (value > atBest) [best, atBest] = [top - down, value];
    else if (value < atBest - 25) break;
  }
  // a likelihood is flat at its top: the light place costs it less than 1e-7
  const found = findMaximum(of, best - 1, best + 1, effort === 'full' ? 1e-9 : 1e-4);
  // the bound of no change is taken only where nothing above it is more likely
  return found.value > bottom + 1e-9
    ? { rate: Math.exp(found.at), logLikelihood: found.value }
    : { rate: 0, logLikelihood: bottom };
}

function logLikelihoodOf(
  network: Network,
  model: ModelName,
  kind: 'restricted' | 'full',
): (logRate: number) => number {
  const scratch = scratchFor(network.parent.length);
  if (model === 'trend') {
    const time = timeNetwork(network);
    return (logRate) => passUpTrend(network, time, Math.exp(logRate), scratch)[kind];
  }
  return kind === 'restricted'
    ? (logRate) => passUp(network, Math.exp(logRate), scratch.messages)
    : (logRate) => fullLogLikelihood(network, Math.exp(logRate), scratch.messages);
}

/**
 * Log-likelihood of Brownian motion with the root's value at its best. The restricted one is its integral over that value
 * under a flat prior (Harville 1974, Biometrika 61: 383–385), so the root's precision alone parts the two.
 */
function fullLogLikelihood(network: Network, rate: number, messages: Messages): number {
  const restricted = passUp(network, rate, messages);
  const atRoot = messages.belowPrecision[network.parent.length - 1]!;
  return restricted + 0.5 * Math.log(atRoot / (2 * Math.PI));
}

/** Restricted likelihood of the rate times its reference prior, per unit of ln(rate). */
function brownianWeight(network: Network): LogRateWeight {
  const { messages } = scratchFor(network.parent.length);
  const room = makeInformationRoom(network.parent.length);
  return (logRate) => {
    const rate = Math.exp(logRate);
    return passUp(network, rate, messages) + 0.5 * Math.log(rateInformation(network, rate, room));
  };
}

/** The same with a slope on a column of the network's observations, such as time, its value integrated too. */
export function columnWeight(network: Network, column: Network): LogRateWeight {
  const scratch = scratchFor(network.parent.length);
  const room = makeInformationRoom(network.parent.length);
  const trendRoom = makeTrendRoom(network.parent.length);
  return (logRate) => {
    const rate = Math.exp(logRate);
    const information =
      rateInformation(network, rate, room) + trendInformation(network, column, rate, trendRoom);
    return passUpTrend(network, column, rate, scratch).restricted + 0.5 * Math.log(Math.max(0, information));
  };
}

/** Share of the least sampling variance that a rate adds over the whole tree where the likelihood has become a straight line in it. */
const straightShare = 1e-4;

/** Least depth of a search, in ln(rate). */
const leastDepth = 8;

/**
 * Where the rate is looked for: under a scale from the values, or where these are all equal from the largest sampling
 * variance over the depth of the tree. Undefined where exact values are all equal, or the tree has no depth.
 */
export function findRateSearch(network: Network): RateSearch | undefined {
  const fromValues = contrastRate(network);
  let depthMa = 0;
  for (let node = 0; node < network.sinceRootMa.length; node++)
    depthMa = Math.max(depthMa, network.sinceRootMa[node]!);
  let least = Infinity;
  let largest = 0;
  for (const { variance } of network.observations) {
    least = Math.min(least, variance);
    largest = Math.max(largest, variance);
  }
  const scale = fromValues > 0 ? fromValues : largest / depthMa;
  if (!(scale > 0 && scale < Infinity)) return undefined;
  const top = Math.log(scale);
  const straight = Math.log((straightShare * least) / depthMa);
  return { top, depth: least > 0 ? Math.max(leastDepth, top - straight) : Infinity };
}
