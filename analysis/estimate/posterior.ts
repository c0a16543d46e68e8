import type { Fit } from './rate/fit.ts';
import { mixtureMoments, mixtureQuantile, type Mixture } from './mixture.ts';
import { beliefOf, mapReading, type Place, type RateReading } from './passes/per-rate.ts';

/** One inferred value on the scale of the model. */
export interface ValueEstimate {
  readonly median: number;
  readonly interval: readonly [number, number];
  readonly standardDeviation: number;
}

/** Reads what one place may be, the rate integrated: a mixture over the grid. */
export function readMixture(fit: Fit, place: Place): RateReading<Mixture> {
  return mapReading(readMixtures(fit, [place]), ([mixture]) => mixture!);
}

/**
 * Reads median, interval and standard deviation of each place, the rate integrated: at each rate a place is normal, with the
 * mean of generalised least squares, and the grid's weights mix the rates. Linear in nodes and places.
 */
export function readPlaces(fit: Fit, places: readonly Place[], level: number): RateReading<ValueEstimate[]> {
  return mapReading(readMixtures(fit, places), (mixtures) =>
    mixtures.map((mixture) => summarise(mixture, level)),
  );
}

/** Reads the mixtures of places; those of all lie in one array, the rates of one place side by side. */
function readMixtures(fit: Fit, places: readonly Place[]): RateReading<Mixture[]> {
  const { weights } = fit.grid;
  const steps = weights.length;
  const means = new Float64Array(places.length * steps);
  const deviations = new Float64Array(places.length * steps);
  // as in `atNode`, a binding of its own: every place is read at every rate
  const read = beliefOf;
  return {
    atRate: (known) => {
      for (let index = 0, at = known.step; index < places.length; index++, at += steps) {
        const { mean, variance } = read(known, places[index]!);
        means[at] = mean;
        deviations[at] = Math.sqrt(variance);
      }
    },
    result: () =>
      places.map((_, index) => ({
        weights,
        means: means.subarray(index * steps, (index + 1) * steps),
        deviations: deviations.subarray(index * steps, (index + 1) * steps),
      })),
  };
}

/**
 * Median, interval and standard deviation of a mixture. The interval leaves equal shares at both ends. Where nothing
 * varies, median and interval are the mean.
 */
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
    ? { ...mixture, deviations: mixture.deviations.map((own) => Math.sqrt(own * own + added)) }
    : mixture;
}
