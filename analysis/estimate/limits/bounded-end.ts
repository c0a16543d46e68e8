import { inverseNormal, logNormalUpperTail, tailFromBell } from '../../statistics/index.ts';
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

/** Half of the squared distance beyond which a normal density counts for nothing, the widest panel against `finest`, and the least `finest`. */
const precisions = {
  full: { exponent: 30, panel: 3, least: 0 },
  light: { exponent: 10, panel: 6, least: 0.1 },
} as const;

/** `finest` at which mean and variance of the bounded value itself are good to 1e-9 of themselves. */
export const finestOfMoments = 2 / 3;

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
  const { exponent, panel: relativePanel, least } = precisions[effort];
  const deviation = Math.sqrt(variance);
  const a = (low - mean) / deviation;
  const b = (high - mean) / deviation;
  const nearest = Math.min(Math.max(0, a), b);
  const reach = Math.sqrt(nearest * nearest + 2 * exponent);
  const from = Math.max(a, -reach);
  const to = Math.min(b, reach);
  const widest = Math.min(3, relativePanel * Math.max(least, finest), 4 / Math.max(1, Math.abs(nearest)));
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

/** Standard deviations beyond which a normal tail is an exponential to all digits. */
const deepTail = 37;

/**
 * A normal value between bounds, set anew for every use: an object for each of a hundred thousand draws would be half of what
 * a compile allocates. It is turned so that the side further out in a tail is the upper one.
 */
export class BoundedValue {
  #mean = NaN;
  /** Below 0 where the sides are turned. */
  #deviation = NaN;
  #low = NaN;
  #high = NaN;
  /** Ends in standard deviations from the mean, the lower first, and the probability above each. */
  #near = NaN;
  #far = NaN;
  #aboveNear = NaN;
  #aboveFar = NaN;

  /** Sets mean, variance and bounds; the bounds may lie far in a tail. */
  set(mean: number, variance: number, { low, high }: Bounds): this {
    const deviation = Math.sqrt(variance);
    const a = (low - mean) / deviation;
    const b = (high - mean) / deviation;
    const isTurned = a < -b;
    this.#mean = mean;
    this.#deviation = isTurned ? -deviation : deviation;
    this.#low = low;
    this.#high = high;
    this.#near = isTurned ? -b : a;
    this.#far = isTurned ? -a : b;
    this.#aboveNear = upperTail(this.#near);
    this.#aboveFar = upperTail(this.#far);
    return this;
  }

  /** Natural log of the probability between the bounds; keeps its digits in the tails. */
  logProbability(): number {
    if (this.#near <= deepTail) return Math.log(this.#aboveNear - this.#aboveFar);
    const log = logNormalUpperTail(this.#near);
    return this.#far === Infinity ? log : log + Math.log1p(-Math.exp(logNormalUpperTail(this.#far) - log));
  }

  /**
   * Place by a share, from 0 up to, not including, 1, of the probability between the bounds, counted from the far end: drawing
   * by inversion.
   */
  placeAt(share: number): number {
    const inside = share + 2 ** -54;
    const z =
      this.#near > deepTail
        ? this.#near - Math.log(inside) / this.#near
        : -inverseNormal(this.#aboveFar + inside * (this.#aboveNear - this.#aboveFar));
    return Math.min(this.#high, Math.max(this.#low, this.#mean + this.#deviation * z));
  }
}

function upperTail(z: number): number {
  if (z === Infinity) return 0;
  const beyond = tailFromBell(Math.abs(z), Math.exp(-0.5 * z * z));
  return z < 0 ? 1 - beyond : beyond;
}

/** Share of a bounded normal value's probability that lies below a place. */
export function boundedShareBelow(mean: number, variance: number, bounds: Bounds, at: number): number {
  if (at <= bounds.low) return 0;
  if (at >= bounds.high) return 1;
  const part = new BoundedValue().set(mean, variance, { low: bounds.low, high: at }).logProbability();
  return Math.exp(part - new BoundedValue().set(mean, variance, bounds).logProbability());
}
