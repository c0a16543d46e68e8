import type { ComparedModel } from './models/compare-models.ts';
import { findBestRate, type Fit } from './rate/fit.ts';
import { readAtRates } from './passes/per-rate.ts';
import { summarise } from './posterior.ts';
import { rateQuantile } from './rate/rate-grid.ts';
import type { ModelFacts } from './trait-answer.ts';

/**
 * Facts of a fit: its rate integrated (squared trait units a million years, median and interval of equal tails) and at its
 * best, its slope, and the models it was compared with. Degrees of freedom are observations less 1, less 2 under a trend.
 */
export function modelFacts(fit: Fit, level: number, compared: readonly ComparedModel[]): ModelFacts {
  const { network, model, grid } = fit;
  const restricted = findBestRate(network, model, 'restricted')!;
  const full = compared.find(({ name }) => name === model)!;
  return {
    name: model,
    degreesOfFreedom: network.observations.length - (model === 'trend' ? 2 : 1),
    rateMedian: rateQuantile(grid, 0.5),
    rateInterval: [rateQuantile(grid, (1 - level) / 2), rateQuantile(grid, (1 + level) / 2)],
    rateReml: restricted.rate,
    rateMl: full.rate,
    logLikelihoodReml: restricted.logLikelihood,
    logLikelihoodMl: full.logLikelihood,
    ...(model === 'trend' ? { slope: slopeOf(fit, level) } : {}),
    compared,
  };
}

function slopeOf(fit: Fit, level: number): NonNullable<ModelFacts['slope']> {
  const { weights } = fit.grid;
  const means = new Float64Array(weights.length);
  const deviations = new Float64Array(weights.length);
  return readAtRates(fit, {
    atRate: ({ trend, step }) => {
      means[step] = trend!.slope;
      deviations[step] = Math.sqrt(trend!.variance);
    },
    result: () => {
      const { median, interval } = summarise({ weights, means, deviations }, level);
      return { median, interval };
    },
  });
}
