import { inverseNormal, logNormalUpperTail, normalUpperTail } from '../../statistics/index.ts';
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

/** Natural log of the probability that a normal value lies between bounds; keeps its digits in the tails. */
export function logProbabilityWithin(mean: number, variance: number, { low, high }: Bounds): number {
  const deviation = Math.sqrt(variance);
  const a = (low - mean) / deviation;
  const b = (high - mean) / deviation;
  if (a === -Infinity) return logNormalUpperTail(-b);
  if (b === Infinity) return logNormalUpperTail(a);
  if (a > 0)
    return logNormalUpperTail(a) + Math.log1p(-Math.exp(logNormalUpperTail(b) - logNormalUpperTail(a)));
  if (b < 0) return logProbabilityWithin(-mean, variance, { low: -high, high: -low });
  return Math.log1p(-normalUpperTail(b) - normalUpperTail(-a));
}

/** Share of a bounded normal value's probability that lies below a place. */
export function boundedShareBelow(mean: number, variance: number, bounds: Bounds, at: number): number {
  if (at <= bounds.low) return 0;
  if (at >= bounds.high) return 1;
  const part = logProbabilityWithin(mean, variance, { low: bounds.low, high: at });
  return Math.exp(part - logProbabilityWithin(mean, variance, bounds));
}

/** One draw of a normal value between bounds, by inversion on the side of its tail. */
export function drawWithin(mean: number, variance: number, bounds: Bounds, random: Random): number {
  return placesWithin(mean, variance, bounds)(random());
}

/**
 * The places of a normal value between bounds by their share of its probability, counted from the end that lies further out in
 * a tail: what drawing by inversion needs, the tails worked out once.
 */
export function placesWithin(
  mean: number,
  variance: number,
  { low, high }: Bounds,
): (share: number) => number {
  const deviation = Math.sqrt(variance);
  const a = (low - mean) / deviation;
  const b = (high - mean) / deviation;
  if (a < -b) {
    const mirrored = placesWithin(-mean, variance, { low: -high, high: -low });
    return (share) => -mirrored(share);
  }
  // beyond 37 standard deviations the tail is an exponential to all digits
  if (a > 37) return (share) => Math.min(high, mean + deviation * (a - Math.log(share + 2 ** -54) / a));
  const upper = normalUpperTail(a);
  const lower = normalUpperTail(b);
  return (share) => {
    const z = -inverseNormal(lower + (share + 2 ** -54) * (upper - lower));
    return Math.min(high, Math.max(low, mean + deviation * z));
  };
}
