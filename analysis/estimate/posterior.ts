import type { Fit } from './fit.ts';
import { mixtureMoments, mixtureQuantile, type Mixture } from './mixture.ts';
import { beliefOf, forEachRate, type Place } from './per-rate.ts';

/** One inferred value on the scale of the model. */
export interface ValueEstimate {
  readonly median: number;
  readonly interval: readonly [number, number];
  readonly standardDeviation: number;
}

/** What each place may be, the rate integrated: a mixture over the grid. Linear in nodes and places. */
export function mixturesAt(fit: Fit, places: readonly Place[]): Mixture[] {
  const { weights } = fit.grid;
  const mixtures = places.map(() => ({
    weights,
    means: new Float64Array(weights.length),
    variances: new Float64Array(weights.length),
  }));
  forEachRate(fit, (known) => {
    places.forEach((place, index) => {
      const belief = beliefOf(known, place);
      mixtures[index]!.means[known.step] = belief.mean;
      mixtures[index]!.variances[known.step] = belief.variance;
    });
  });
  return mixtures;
}

/** Median, interval and standard deviation of each place, the rate integrated. */
export function estimatePlaces(fit: Fit, places: readonly Place[], level: number): ValueEstimate[] {
  return mixturesAt(fit, places).map((mixture) => summarise(mixture, level));
}

/** Median, interval and standard deviation of a mixture. */
export function summarise(mixture: Mixture, level: number): ValueEstimate {
  const moments = mixtureMoments(mixture);
  const quantile = (probability: number) => mixtureQuantile(mixture, probability, moments);
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
