import { conditionOnOne } from './limits/condition-on-one.ts';
import { conditionOnSeveral } from './limits/condition-on-several.ts';
import type { Fit } from './rate/fit.ts';
import { limitProbabilities, type LimitProbability } from './limits/limit-probability.ts';
import type { LimitObservation } from './limits/limit-observation.ts';
import { estimatePlaces, type ValueEstimate } from './posterior.ts';

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

/** A limit with the node of the network that its taxon is. */
export interface PlacedLimit {
  readonly limit: LimitObservation;
  readonly at: number;
}

/**
 * Estimates of nodes with the limits in: by closed form at each rate for none, by quadrature for one, by sampling for
 * several. Where the samples have not settled, the values are those without limits and `reported` is false.
 */
export function estimateNodes(
  fit: Fit,
  nodes: readonly number[],
  limits: readonly PlacedLimit[],
  options: { readonly level: number; readonly seed: string | number },
): { readonly values: readonly ValueEstimate[]; readonly facts: LimitFacts } {
  const plain = () =>
    estimatePlaces(
      fit,
      nodes.map((node) => ({ node, upMa: 0 })),
      options.level,
    );
  if (limits.length === 0)
    return { values: plain(), facts: { method: 'none', probabilities: [], reported: true } };
  // a span asks for thousands of values and for no facts
  const probabilities = fit.effort === 'light' ? [] : limitProbabilities(fit, limits);
  if (limits.length === 1) {
    const values = conditionOnOne(fit, limits[0]!.limit, limits[0]!.at, nodes, options.level);
    const { probability } = probabilities[0] ?? {};
    return { values, facts: { method: 'quadrature', probabilities, probability, reported: true } };
  }
  const { values, splitRHat, effectiveSize, settled } = conditionOnSeveral(fit, limits, nodes, options);
  return {
    values: settled ? values : plain(),
    facts: { method: 'sampling', probabilities, splitRHat, effectiveSize, reported: settled },
  };
}
