import { inverseNormal, logNormalUpperTail, tailFromBell } from '../../statistics/index.ts';
import type { Random } from '../../random/index.ts';
import type { Effort } from '../rate/rate-grid.ts';

/** Ends between which a normal value is known to lie; one of them may be infinite. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** Points of a value between bounds, and the weight of each; the weights add up to 1. */
export interface BoundedPoints {
  readonly at: Float64Array;
  readonly weights: Float64Array;
}

/** Nodes and weights of Gauss and Legendre's rule with eight points (Abramowitz and Stegun 1964, table 25.4). */
const gauss = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
] as const;

/**
 * Half of the squared distance beyond which a normal density counts for nothing, the widest panel in standard deviations and
 * against `finest`, and the least `finest`. The full ones leave mean and variance of a cut-off normal value an error of less
 * than 1e-10 of themselves.
 */
const precisions = {
  full: { exponent: 30, widest: 2, panel: 2, least: 0 },
  light: { exponent: 10, widest: 3, panel: 6, least: 0.1 },
} as const;

/**
 * Points at which to take a smooth function of a normal value known to lie between bounds, by Gauss and Legendre's rule
 * on panels; `finest` is the scale, in standard deviations, below which the function does not change. The bounds may lie
 * far in a tail.
 */
export function boundedPoints(
  mean: number,
  variance: number,
  { low, high }: Bounds,
  { finest, effort }: { readonly finest: number; readonly effort: Effort },
): BoundedPoints {
  const { exponent, widest: widestPanel, panel: relativePanel, least } = precisions[effort];
  const deviation = Math.sqrt(variance);
  const a = (low - mean) / deviation;
  const b = (high - mean) / deviation;
  const nearest = Math.min(Math.max(0, a), b);
  const reach = Math.sqrt(nearest * nearest + 2 * exponent);
  const from = Math.max(a, -reach);
  const to = Math.min(b, reach);
  const widest = Math.min(
    widestPanel,
    relativePanel * Math.max(least, finest),
    4 / Math.max(1, Math.abs(nearest)),
  );
  const panels = Math.min(4000, Math.max(2, Math.ceil((to - from) / widest)));
  const half = (to - from) / (2 * panels);
  const at = new Float64Array(panels * 2 * gauss.length);
  const weights = new Float64Array(at.length);
  let total = 0;
  let point = 0;
  for (let panel = 0; panel < panels; panel++) {
    const middle = from + half * (2 * panel + 1);
    for (let pair = 0; pair < gauss.length; pair++)
      for (let side = -1; side <= 1; side += 2) {
        const z = middle + side * (half * gauss[pair]![0]);
        const weight = gauss[pair]![1] * Math.exp(-0.5 * (z * z - nearest * nearest));
        at[point] = mean + deviation * z;
        weights[point] = weight;
        total += weight;
        point++;
      }
  }
  for (let k = 0; k < weights.length; k++) weights[k]! /= total;
  return { at, weights };
}

/**
 * A normal value between bounds, turned so that the side further out in a tail is the upper one, and what lies above each
 * end: all that its probability and its places follow from.
 */
export interface TurnedValue {
  readonly mean: number;
  /** Standard deviation, below 0 where the sides are turned. */
  readonly deviation: number;
  /** Ends in standard deviations from the mean, the lower first. */
  readonly near: number;
  readonly far: number;
  readonly aboveNear: number;
  readonly aboveFar: number;
  readonly bounds: Bounds;
}

/** Standard deviations beyond which a normal tail is an exponential to all digits. */
const deepTail = 37;

/** Turns a normal value between bounds. */
export function turnedValue(mean: number, variance: number, bounds: Bounds): TurnedValue {
  const { low, high } = bounds;
  const deviation = Math.sqrt(variance);
  const a = (low - mean) / deviation;
  const b = (high - mean) / deviation;
  const isTurned = a < -b;
  const near = isTurned ? -b : a;
  const far = isTurned ? -a : b;
  const aboveNear = upperTail(near);
  const aboveFar = far === Infinity ? 0 : upperTail(far);
  return { mean, deviation: isTurned ? -deviation : deviation, near, far, aboveNear, aboveFar, bounds };
}

function upperTail(z: number): number {
  const beyond = tailFromBell(Math.abs(z), Math.exp(-0.5 * z * z));
  return z < 0 ? 1 - beyond : beyond;
}

/** Natural log of the probability that the value lies between its bounds; keeps its digits in the tails. */
export function logProbabilityOf({ near, far, aboveNear, aboveFar }: TurnedValue): number {
  if (near <= deepTail) return Math.log(aboveNear - aboveFar);
  const log = logNormalUpperTail(near);
  return far === Infinity ? log : log + Math.log1p(-Math.exp(logNormalUpperTail(far) - log));
}

/**
 * Place of the value by a share, from 0 up to, not including, 1, of the probability between its bounds, counted from the far
 * end: drawing by inversion.
 */
export function placeOf(value: TurnedValue, share: number): number {
  const { mean, deviation, near, aboveNear, aboveFar, bounds } = value;
  const inside = share + 2 ** -54;
  const z =
    near > deepTail
      ? near - Math.log(inside) / near
      : -inverseNormal(aboveFar + inside * (aboveNear - aboveFar));
  return Math.min(bounds.high, Math.max(bounds.low, mean + deviation * z));
}

/** The same log of a probability, from mean, variance and bounds. */
export function logProbabilityWithin(mean: number, variance: number, bounds: Bounds): number {
  return logProbabilityOf(turnedValue(mean, variance, bounds));
}

/** Share of a bounded normal value's probability that lies below a place. */
export function boundedShareBelow(mean: number, variance: number, bounds: Bounds, at: number): number {
  if (at <= bounds.low) return 0;
  if (at >= bounds.high) return 1;
  const part = logProbabilityWithin(mean, variance, { low: bounds.low, high: at });
  return Math.exp(part - logProbabilityWithin(mean, variance, bounds));
}

/** One draw of a normal value between bounds. */
export function drawWithin(mean: number, variance: number, bounds: Bounds, random: Random): number {
  return placeOf(turnedValue(mean, variance, bounds), random());
}
