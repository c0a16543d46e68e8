import { beliefOf, type RateReading } from '../passes/per-rate.ts';
import { BoundedValue } from './bounded-end.ts';
import { boundsOf, type PlacedLimit } from './limit-observation.ts';

/** How probable the measured relatives alone find what one broken specimen says. */
export interface LimitProbability {
  readonly specimen: string;
  readonly probability: number;
}

/**
 * Reads the probability of each limit by the measured relatives alone, other limits left out, the rate integrated: the share of a
 * normal curve, its own twig's variance included, that lies on the limit's side. Empty without limits.
 */
export function readLimitProbabilities(limits: readonly PlacedLimit[]): RateReading<LimitProbability[]> {
  const sums = new Float64Array(limits.length);
  const value = new BoundedValue();
  return {
    needs: () => limits.length > 0,
    atRate: (known) =>
      limits.forEach(({ limit, at }, index) => {
        const { mean, variance } = beliefOf(known, { node: at, upMa: 0 });
        value.set(mean, variance + limit.twigVariance, boundsOf(limit));
        sums[index]! += known.weight * Math.exp(value.logProbability());
      }),
    result: () => limits.map(({ limit }, index) => ({ specimen: limit.specimen, probability: sums[index]! })),
  };
}
