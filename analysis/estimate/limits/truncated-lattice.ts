import { BoundedValue, type Bounds } from './bounded-end.ts';
import type { SmallMatrix } from './small-matrix.ts';

/** Points of several bounded normal values that hang together, and their weights, which add up to 1. */
export interface WeightedPoints {
  /** One array a value. */
  readonly at: readonly Float64Array[];
  readonly weights: Float64Array;
}

/**
 * Weighted points of bounded normal values by sequential importance (Geweke 1991; Hajivassiliou and McFadden 1998,
 * Econometrica 66: 863–896) on a lattice of evenly spread numbers, without noise: each value is set between its bounds given
 * those before it, and the point weighs what the bounds leave.
 */
export function truncatedLattice(
  means: readonly number[],
  covariance: SmallMatrix,
  bounds: readonly Bounds[],
  count: number,
): WeightedPoints {
  const lower = choleskySmall(covariance);
  const at = bounds.map(() => new Float64Array(count));
  const logs = new Float64Array(count);
  const unit = bounds.map(() => 0);
  const first = new BoundedValue().set(means[0]!, lower[0]![0]! ** 2, bounds[0]!);
  const later = new BoundedValue();
  let top = -Infinity;
  for (let point = 0; point < count; point++) {
    for (let i = 0; i < bounds.length; i++) {
      const row = lower[i]!;
      let mean = means[i]!;
      for (let j = 0; j < i; j++) mean += row[j]! * unit[j]!;
      const value = i === 0 ? first : later.set(mean, row[i]! * row[i]!, bounds[i]!);
      // what the first value's bounds leave is the same for every point
      if (i > 0) logs[point]! += value.logProbability();
      const place = value.placeAt(evenlySpread(point, i));
      at[i]![point] = place;
      unit[i] = (place - mean) / row[i]!;
    }
    top = Math.max(top, logs[point]!);
  }
  return { at, weights: shareOut(logs, top) };
}

/** Weights that add up to 1, from their logs, written over these. */
function shareOut(logs: Float64Array, top: number): Float64Array {
  let total = 0;
  for (let k = 0; k < logs.length; k++) {
    logs[k] = Math.exp(logs[k]! - top);
    total += logs[k]!;
  }
  for (let k = 0; k < logs.length; k++) logs[k]! /= total;
  return logs;
}

/** Number inside 0 to 1 of a point in one direction: multiples of the root of a prime, wrapped (Weyl's sequence). */
function evenlySpread(point: number, direction: number): number {
  const multiple = (point + 0.5) * Math.sqrt(primes[direction % primes.length]!);
  return multiple - Math.floor(multiple);
}

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37] as const;

/** Lower triangle whose square is a small symmetric positive definite matrix. Throws where it is singular. */
function choleskySmall(matrix: SmallMatrix): SmallMatrix {
  const lower: number[][] = [];
  matrix.forEach((row, i) => {
    const own: number[] = [];
    lower.push(own);
    for (let j = 0; j <= i; j++) {
      let sum = row[j]!;
      for (let k = 0; k < j; k++) sum -= own[k]! * lower[j]![k]!;
      if (i === j && !(sum > 0)) throw new Error('the covariance of the limits is singular');
      own.push(i === j ? Math.sqrt(sum) : sum / lower[j]![j]!);
    }
  });
  return lower;
}
