import { chiSquareQuantile, chiSquareUpperTail } from '../statistics/index.ts';

/** Weighted mean of several dates of one thing. Errors are one standard deviation, Ma. */
export interface WeightedMean {
  readonly meanMa: number;
  /** Error from the stated errors alone. */
  readonly internalSigmaMa: number;
  /** Error to print: widened by √MSWD where the dates scatter beyond the upper 97.5% point, else the internal one. */
  readonly sigmaMa: number;
  /** Mean square of weighted deviations, with one degree of freedom less than dates; NaN for one date. */
  readonly mswd: number;
  readonly degreesOfFreedom: number;
  /** Probability of such scatter or more if the stated errors are right; NaN for one date. */
  readonly fitProbability: number;
  readonly scattersTooMuch: boolean;
}

/**
 * Mean of dates weighted by one over their squared errors, with the mean square of weighted deviations (Wendt and Carl
 * 1991, Chemical Geology 86: 275–285). Throws for no dates or an error of 0 or less.
 */
export function weightedMean(
  dates: readonly { readonly ageMa: number; readonly sigmaMa: number }[],
): WeightedMean {
  if (dates.length === 0) throw new Error('a weighted mean needs at least one date');
  const wrong = dates.find(({ sigmaMa }) => !(sigmaMa > 0));
  if (wrong) throw new Error(`error of a date must be above 0 Ma, got ${wrong.sigmaMa}`);
  const total = dates.reduce((sum, { sigmaMa }) => sum + sigmaMa ** -2, 0);
  const meanMa = dates.reduce((sum, { ageMa, sigmaMa }) => sum + ageMa / sigmaMa ** 2, 0) / total;
  const deviations = dates.reduce((sum, { ageMa, sigmaMa }) => sum + ((ageMa - meanMa) / sigmaMa) ** 2, 0);
  const degreesOfFreedom = dates.length - 1;
  const internalSigmaMa = 1 / Math.sqrt(total);
  if (degreesOfFreedom === 0)
    return {
      meanMa,
      internalSigmaMa,
      sigmaMa: internalSigmaMa,
      mswd: NaN,
      degreesOfFreedom,
      fitProbability: NaN,
      scattersTooMuch: false,
    };
  const mswd = deviations / degreesOfFreedom;
  const scattersTooMuch = deviations > chiSquareQuantile(0.975, degreesOfFreedom);
  return {
    meanMa,
    internalSigmaMa,
    sigmaMa: scattersTooMuch ? internalSigmaMa * Math.sqrt(mswd) : internalSigmaMa,
    mswd,
    degreesOfFreedom,
    fitProbability: chiSquareUpperTail(deviations, degreesOfFreedom),
    scattersTooMuch,
  };
}
