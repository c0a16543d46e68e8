import { findMaximum } from '../../statistics/index.ts';
import { negligibleWeight } from '../../tolerance.ts';

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

/** Where the log of the rate is looked for. */
export interface RateSearch {
  /** Scale of the data: the search begins a little above it. */
  readonly top: number;
  /** Depth under it past which the likelihood is a straight line in the rate; Infinity where exact values let it fall for ever. */
  readonly depth: number;
}

/** How far below the scale of the data the log of the rate is looked for at most. */
const scanDepth = 60;

/**
 * Grid over the rate by the trapezoid rule in asinh-stretched ln(rate) about the top of its weight, out to where the
 * weight is negligible. Undefined where the weight does not fall off: exact values that are all equal leave no rate.
 */
export function findRateGrid(
  weightOf: LogRateWeight,
  search: RateSearch,
  effort: Effort = 'full',
): RateGrid | undefined {
  const step = gridSteps[effort];
  const peak = findPeak(weightOf, search, effort);
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

function findPeak(weightOf: LogRateWeight, { top, depth }: RateSearch, effort: Effort) {
  const { step, near } = peakSearch[effort];
  let best = top;
  let atBest = -Infinity;
  let last = -Infinity;
  for (let down = -4; down <= Math.min(scanDepth, depth); down += step) {
    last = weightOf(top - down);
    if (last > atBest) [best, atBest] = [top - down, last];
    else if (last < atBest - 25) break;
  }
  // with sampling variance the weight falls off as the rate itself, below the depth
  if (depth === Infinity && !(last < atBest - 12)) return undefined;
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
    const here = weights[k]!;
    const next = weights[k + 1]!;
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
  let low = 0;
  let high = 1;
  for (let k = 0; k < 50; k++) {
    const middle = (low + high) / 2;
    if (of(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
