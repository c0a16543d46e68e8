import { findMaximum } from '../../statistics/index.ts';
import { negligibleWeight } from '../../tolerance.ts';
import { makeMessages } from '../passes/messages.ts';
import type { Network } from '../passes/network.ts';
import { passUp } from '../passes/pass-up.ts';

/** Rates and the weight of each in every estimate; the weights add up to 1. */
export interface RateGrid {
  readonly rates: Float64Array;
  readonly weights: Float64Array;
  /** ln(rate) at the top of the weight, the width of the top, and the stretched coordinate of the first rate. */
  readonly centre: number;
  readonly width: number;
  readonly firstStep: number;
  readonly step: number;
}

/** What the likelihood says of the rate: the log of its weight per unit of ln(rate), up to a constant. */
export type LogRateWeight = (logRate: number) => number;

/** How exact an answer is: full for what is printed, light for values that are only some of many in a range. */
export type Effort = 'full' | 'light';

/**
 * Steps of the grid in the stretched coordinate. Halving the full one moves quantiles by less than 1e-9 of their spread,
 * halving the light one by less than 1e-4.
 */
const gridSteps = { full: 0.17, light: 0.45 } as const;

/** How far below the scale of the data the log of the rate is looked for. */
const scanDepth = 60;

/**
 * Scale of the rate from the data alone, as if no observation had an error: the mean square of the independent contrasts
 * (Felsenstein 1985, American Naturalist 125: 1–15), 0 where all values are equal.
 */
export function contrastRate(network: Network): number {
  const means = network.observations.map(({ mean }) => mean);
  const lowest = Math.min(...means);
  const range = Math.max(...means) - lowest;
  if (!(range > 0)) return 0;
  const count = network.parent.length;
  const exact = {
    ...network,
    ownPrecision: network.ownPrecision.map((precision) => (precision > 0 ? Infinity : 0)),
    sharedLogLikelihood: 0,
  };
  // values on a range of 1: the likelihoods' difference would lose the digits of very small ones
  const scaled = network.ownMean.map((mean) => (mean - lowest) / range);
  const messages = makeMessages(count);
  const flat = passUp({ ...exact, ownMean: new Float64Array(count) }, 1, messages);
  const squares = 2 * (flat - passUp({ ...exact, ownMean: scaled }, 1, messages));
  return (squares / Math.max(1, means.length - 1)) * range * range;
}

/**
 * Grid over the rate by the trapezoid rule in asinh-stretched ln(rate) about the top of its weight, out to where the
 * weight is negligible. Undefined where the weight does not fall off: exact values that are all equal leave no rate.
 */
export function findRateGrid(
  weightOf: LogRateWeight,
  topLogRate: number,
  effort: Effort = 'full',
): RateGrid | undefined {
  const step = gridSteps[effort];
  const peak = findPeak(weightOf, topLogRate, effort);
  if (!peak) return undefined;
  const width = peakWidth(weightOf, peak.at, peak.value);
  const nodes: { logRate: number; weight: number }[] = [];
  const add = (x: number): boolean => {
    const logRate = peak.at + width * Math.sinh(x);
    const weight = Math.exp(weightOf(logRate) - peak.value) * Math.cosh(x);
    nodes.push({ logRate, weight });
    // with two degrees of freedom the variance never ends; past this nothing of a quantile is left
    if (logRate - peak.at > scanDepth) return false;
    // a variance grows with the rate, so a node on the upper side counts by its part in the variance
    return weight * Math.exp(Math.max(0, logRate - peak.at)) > (effort === 'full' ? negligibleWeight : 1e-6);
  };
  add(0);
  for (let k = 1; add(k * step) && k < 60; k++);
  let below = 1;
  while (add(-below * step) && below < 60) below++;
  nodes.sort((a, b) => a.logRate - b.logRate);
  const total = nodes.reduce((sum, node) => sum + node.weight, 0);
  return {
    rates: Float64Array.from(nodes, (node) => Math.exp(node.logRate)),
    weights: Float64Array.from(nodes, (node) => node.weight / total),
    centre: peak.at,
    width,
    firstStep: -below * step,
    step,
  };
}

/** Steps in which the top of the weight is looked for, and how near to it the grid is laid: where it lies exactly changes little. */
const peakSearch = { full: { step: 0.5, near: 1e-5 }, light: { step: 1, near: 1e-2 } } as const;

function findPeak(weightOf: LogRateWeight, topLogRate: number, effort: Effort) {
  const { step, near } = peakSearch[effort];
  let best = topLogRate;
  let atBest = -Infinity;
  let last = -Infinity;
  for (let down = -4; down <= scanDepth; down += step) {
    last = weightOf(topLogRate - down);
    if (last > atBest) [best, atBest] = [topLogRate - down, last];
    else if (last < atBest - 25) break;
  }
  if (!(last < atBest - 12)) return undefined;
  return findMaximum(weightOf, best - step, best + step, near);
}

/** Standard deviation of the normal curve that fits the top of the weight. */
function peakWidth(weightOf: LogRateWeight, at: number, value: number): number {
  const step = 0.1;
  const bend = (2 * value - weightOf(at + step) - weightOf(at - step)) / (step * step);
  return bend > 0.1 ? 1 / Math.sqrt(bend) : 3;
}

/**
 * Rate below which the given share of the weight lies, in squared trait units a million years: a cubic through the
 * cumulative weights of the grid, each by the trapezoid rule with its end correction.
 */
export function rateQuantile(grid: RateGrid, probability: number): number {
  const { weights } = grid;
  let sum = 0;
  for (let k = 0; k + 1 < weights.length; k++) {
    const [here, next] = [weights[k]!, weights[k + 1]!];
    // trapezoid with the end correction of Euler and Maclaurin
    const gain = (here + next) / 2 - ((weights[k + 2] ?? 0) - next - here + (weights[k - 1] ?? 0)) / 24;
    if (sum + gain < probability && k + 2 < weights.length) {
      sum += gain;
      continue;
    }
    const rise = (t: number) => t * (here + t * (3 * gain - 2 * here - next + t * (here + next - 2 * gain)));
    const t = Math.min(
      1,
      bisect((at) => rise(at) - (probability - sum)),
    );
    return Math.exp(grid.centre + grid.width * Math.sinh(grid.firstStep + (k + t) * grid.step));
  }
  return grid.rates[0]!;
}

function bisect(of: (t: number) => number): number {
  let [low, high] = [0, 1];
  for (let k = 0; k < 50; k++) {
    const middle = (low + high) / 2;
    if (of(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
