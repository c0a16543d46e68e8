import { forEachRate, beliefOf } from '../passes/per-rate.ts';
import type { Fit } from '../rate/fit.ts';
import { logProbabilityWithin } from './bounded-end.ts';
import { boundsOf, type LimitObservation } from './limit-observation.ts';

/** How probable the measured relatives alone find what one broken specimen says. */
export interface LimitProbability {
  readonly specimen: string;
  readonly probability: number;
}

/**
 * Probability of each limit by the measured relatives alone, other limits left out, the rate integrated: the share of a
 * normal curve, its own twig's variance included, that lies on the limit's side. Empty without limits.
 */
export function limitProbabilities(
  fit: Fit,
  limits: readonly { readonly limit: LimitObservation; readonly at: number }[],
): LimitProbability[] {
  const sums = new Float64Array(limits.length);
  forEachRate(fit, (known) => {
    limits.forEach(({ limit, at }, index) => {
      const { mean, variance } = beliefOf(known, { node: at, upMa: 0 });
      const log = logProbabilityWithin(mean, variance + limit.twigVariance, boundsOf(limit));
      sums[index]! += fit.grid.weights[known.step]! * Math.exp(log);
    });
  });
  return limits.map(({ limit }, index) => ({ specimen: limit.specimen, probability: sums[index]! }));
}
