import type { Fit } from './rate/fit.ts';
import { mixtureDeviations, mixtureMoments, mixtureQuantile, type Mixture } from './mixture.ts';
import { beliefOf, forEachRate, type Place } from './passes/per-rate.ts';

/** One inferred value on the scale of the model. */
export interface ValueEstimate {
  readonly median: number;
  readonly interval: readonly [number, number];
  readonly standardDeviation: number;
}

/** Means and variances of places at every rate of the grid: one run of places a rate. */
interface Beliefs {
  readonly steps: number;
  readonly means: Float64Array;
  readonly variances: Float64Array;
}

function gatherBeliefs(fit: Fit, places: readonly Place[]): Beliefs {
  const steps = fit.grid.weights.length;
  const means = new Float64Array(places.length * steps);
  const variances = new Float64Array(places.length * steps);
  forEachRate(fit, (known) => {
    for (let index = 0; index < places.length; index++) {
      const belief = beliefOf(known, places[index]!);
      means[known.step * places.length + index] = belief.mean;
      variances[known.step * places.length + index] = belief.variance;
    }
  });
  return { steps, means, variances };
}

/** What one place may be, the rate integrated: a mixture over the grid. */
export function mixtureAt(fit: Fit, place: Place): Mixture {
  const { means, variances } = gatherBeliefs(fit, [place]);
  return { weights: fit.grid.weights, means, variances };
}

/**
 * Median, interval and standard deviation of each place, the rate integrated: at each rate a place is normal, with the
 * mean of generalised least squares, and the grid's weights mix the rates. Linear in nodes and places.
 */
export function estimatePlaces(fit: Fit, places: readonly Place[], level: number): ValueEstimate[] {
  const { steps, means, variances } = gatherBeliefs(fit, places);
  // one mixture is written over for every place: thousands of small arrays would cost more than the arithmetic
  const mixture = {
    weights: fit.grid.weights,
    means: new Float64Array(steps),
    variances: new Float64Array(steps),
  };
  return places.map((_, index) => {
    for (let step = 0; step < steps; step++) {
      mixture.means[step] = means[step * places.length + index]!;
      mixture.variances[step] = variances[step * places.length + index]!;
    }
    return summarise(mixture, level);
  });
}

/**
 * Median, interval and standard deviation of a mixture. The interval leaves equal shares at both ends. Where nothing
 * varies, median and interval are the mean.
 */
export function summarise(mixture: Mixture, level: number): ValueEstimate {
  const moments = mixtureMoments(mixture);
  const deviations = mixtureDeviations(mixture);
  const quantile = (probability: number) => mixtureQuantile(mixture, probability, moments, deviations);
  return {
    median: quantile(0.5),
    interval: [quantile((1 - level) / 2), quantile((1 + level) / 2)],
    standardDeviation: Math.sqrt(moments.variance),
  };
}

/** The mixture with a variance to be met on top, as for a new reading. */
export function withAddedVariance(mixture: Mixture, added: number): Mixture {
  return added > 0
    ? { ...mixture, variances: mixture.variances.map((variance) => variance + added) }
    : mixture;
}
