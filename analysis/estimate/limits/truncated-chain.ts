import type { Random } from '../../random/index.ts';
import { BoundedValue, type Bounds } from './bounded-end.ts';
import type { SmallMatrix } from './small-matrix.ts';

/** Several bounded normal values that hang together: means, inverse of their covariance, and bounds. */
export interface BoundedValues {
  readonly means: readonly number[];
  readonly precision: SmallMatrix;
  readonly bounds: readonly Bounds[];
}

/**
 * Draws of bounded normal values by Gibbs sampling, each in turn given the others, from a start just inside the bounds;
 * the first `warmUp` rounds are thrown away. One array a value.
 */
export function runTruncatedChain(
  { means, precision, bounds }: BoundedValues,
  random: Random,
  counts: { readonly warmUp: number; readonly kept: number },
): Float64Array[] {
  const draws = bounds.map(() => new Float64Array(counts.kept));
  const state = bounds.map(({ low, high }, i) => Math.min(high, Math.max(low, means[i]!)));
  const value = new BoundedValue();
  for (let round = -counts.warmUp; round < counts.kept; round++) {
    for (let i = 0; i < state.length; i++) {
      const row = precision[i]!;
      let pull = 0;
      for (let j = 0; j < state.length; j++) if (j !== i) pull += row[j]! * (state[j]! - means[j]!);
      state[i] = value.set(means[i]! - pull / row[i]!, 1 / row[i]!, bounds[i]!).placeAt(random());
      if (round >= 0) draws[i]![round] = state[i]!;
    }
  }
  return draws;
}
