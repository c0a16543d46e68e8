import { inverseNormal } from '../statistics/index.ts';
import { beliefAlongBranch, beliefAt, type Belief } from './belief.ts';
import { forEachRate, type BrownianFit } from './fit.ts';
import type { Messages } from './messages.ts';
import { mixtureMoments, mixtureQuantile } from './mixture.ts';

/** One inferred value on the scale of the model. */
export interface ValueEstimate {
  readonly median: number;
  readonly interval: readonly [number, number];
  readonly standardDeviation: number;
}

/** Where a value is wanted: a node of the network, or a point on the branch above it, `upMa` before the node. */
export interface Place {
  readonly node: number;
  readonly upMa: number;
}

/** Beliefs of places at every rate of the grid, one row of rates a place. */
export interface PlaceBeliefs {
  readonly means: Float64Array;
  readonly variances: Float64Array;
}

/** Means and variances of each place at each rate: linear in nodes and places. */
export function beliefsAt(fit: BrownianFit, places: readonly Place[]): PlaceBeliefs {
  const steps = fit.grid.rates.length;
  const means = new Float64Array(places.length * steps);
  const variances = new Float64Array(places.length * steps);
  forEachRate(fit, (messages, rate, step) => {
    places.forEach((place, index) => {
      const belief = beliefOf(fit, messages, rate, place);
      means[index * steps + step] = belief.mean;
      variances[index * steps + step] = belief.variance;
    });
  });
  return { means, variances };
}

function beliefOf(fit: BrownianFit, messages: Messages, rate: number, { node, upMa }: Place): Belief {
  if (upMa === 0) return beliefAt(messages, node);
  return beliefAlongBranch(messages, node, rate, upMa, Math.max(0, fit.network.branchMa[node]! - upMa));
}

/**
 * Median, interval and standard deviation of each place, the rate integrated: quantiles of the mixture of normal
 * distributions over the grid of rates. `added` is a variance to be met on top, as for a new reading.
 */
export function estimatePlaces(
  fit: BrownianFit,
  places: readonly Place[],
  level: number,
  added: (index: number) => number = () => 0,
): ValueEstimate[] {
  const { means, variances } = beliefsAt(fit, places);
  const steps = fit.grid.rates.length;
  return places.map((_, index) => {
    const here = variances.subarray(index * steps, (index + 1) * steps);
    const extra = added(index);
    return summarise(
      fit.grid.weights,
      means.subarray(index * steps, (index + 1) * steps),
      extra > 0 ? here.map((variance) => variance + extra) : here,
      level,
    );
  });
}

/** Median, interval and standard deviation of a mixture of normal distributions. */
export function summarise(
  weights: Float64Array,
  means: Float64Array,
  variances: Float64Array,
  level: number,
): ValueEstimate {
  const { mean, variance } = mixtureMoments(weights, means, variances);
  if (!(variance > 0)) return { median: mean, interval: [mean, mean], standardDeviation: 0 };
  const deviation = Math.sqrt(variance);
  const reach = -inverseNormal((1 - level) / 2) * deviation;
  const quantile = (probability: number, start: number) =>
    mixtureQuantile(weights, means, variances, probability, start);
  return {
    median: quantile(0.5, mean),
    interval: [quantile((1 - level) / 2, mean - reach), quantile((1 + level) / 2, mean + reach)],
    standardDeviation: deviation,
  };
}
