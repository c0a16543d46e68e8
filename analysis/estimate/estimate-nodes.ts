import { readGivenOneLimit } from './limits/condition-on-one.ts';
import { readGivenSeveralLimits } from './limits/condition-on-several.ts';
import { readLimitProbabilities, type LimitProbability } from './limits/limit-probability.ts';
import type { PlacedLimit } from './limits/limit-observation.ts';
import { both, mapReading, readAtRates, type RateReading } from './passes/per-rate.ts';
import { readPlaces, type ValueEstimate } from './posterior.ts';
import type { Fit } from './rate/fit.ts';

/** How limits of broken specimens entered the estimates. */
export interface LimitFacts {
  readonly method: 'none' | 'quadrature' | 'sampling';
  /** Probability that the measured relatives alone give to each limit; under 0.001 both should be shown. */
  readonly probabilities: readonly LimitProbability[];
  /** That of the only limit, where there is one. */
  readonly probability?: number | undefined;
  readonly splitRHat?: number;
  readonly effectiveSize?: number;
  /** False where sampling did not settle: the estimates then stand without the limits. */
  readonly reported: boolean;
}

/** Estimates of nodes, and how the limits entered. */
export interface NodeValues {
  readonly values: readonly ValueEstimate[];
  readonly facts: LimitFacts;
}

/**
 * Reads nodes with the limits in: by closed form at each rate for none, by quadrature for one, by sampling for several.
 * Where the samples have not settled, the values are those without limits and `reported` is false.
 */
export function readNodes(
  fit: Fit,
  nodes: readonly number[],
  limits: readonly PlacedLimit[],
  options: { readonly level: number; readonly seed: string | number },
): RateReading<NodeValues> {
  const places = nodes.map((node) => ({ node, upMa: 0 }));
  if (limits.length === 0)
    return mapReading(readPlaces(fit, places, options.level), (values) => ({
      values,
      facts: { method: 'none', probabilities: [], reported: true },
    }));
  // a span asks for thousands of values and for no facts
  const probabilities = readLimitProbabilities(fit.effort === 'light' ? [] : limits);
  if (limits.length === 1)
    return mapReading(
      both(readGivenOneLimit(fit, limits[0]!, nodes, options.level), probabilities),
      ([values, found]) => {
        const { probability } = found[0] ?? {};
        return { values, facts: { method: 'quadrature', probabilities: found, probability, reported: true } };
      },
    );
  return mapReading(
    both(readGivenSeveralLimits(fit, limits, nodes, options), probabilities),
    ([{ values, settled, splitRHat, effectiveSize }, found]) => ({
      values: settled ? values : readAtRates(fit, readPlaces(fit, places, options.level)),
      facts: { method: 'sampling', probabilities: found, splitRHat, effectiveSize, reported: settled },
    }),
  );
}
