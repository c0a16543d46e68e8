import { inverseNormal, studentQuantile } from '../statistics/index.ts';
import type { PooledSpread } from './pooled-spread.ts';

/** One specimen's value on the scale of the model. */
export interface SpecimenValue {
  readonly value: number;
  /**
   * Standard error that the spread among specimens does not hold: of an approximate or corrected value, the
   * author’s ± through `errorOfPlusMinus`, or of the reading where there is no spread at all. 0 if left out.
   */
  readonly error?: number;
}

/** Mean of a taxon on the scale of the model. */
export interface TaxonMean {
  readonly mean: number;
  /** Sampling variance of the mean: what `estimateTrait` takes. */
  readonly variance: number;
  readonly standardError: number;
  /** 95% interval, or of the level asked for; undefined where nothing says how far the mean may be off. */
  readonly interval?: readonly [number, number];
  /** Degrees of freedom behind the interval; Infinity where it rests on stated errors alone. */
  readonly df: number;
  readonly n: number;
}

/** Standard error that an author's ± stands for, read as half of a 95% interval. */
export function errorOfPlusMinus(plusMinus: number): number {
  return plusMinus / inverseNormal(0.975);
}

/**
 * Mean of a taxon's specimens, each weighted by one over the pooled variance plus its own stated error squared, with
 * an interval by Student's t at the pooled degrees of freedom. Without a pooled spread only stated errors count.
 */
export function taxonMean(
  values: readonly SpecimenValue[],
  pooled: PooledSpread | undefined,
  level = 0.95,
): TaxonMean {
  if (values.length === 0) throw new Error('a taxon mean needs at least one value');
  const spread = pooled?.variance ?? 0;
  const variances = values.map(({ error = 0 }) => spread + error * error);
  const n = values.length;
  if (variances.every((variance) => variance === 0)) {
    const mean = values.reduce((sum, { value }) => sum + value, 0) / n;
    return { mean, variance: 0, standardError: 0, df: pooled?.df ?? 0, n };
  }
  // an exact value beside inexact ones would silence them: it gets the smallest error that anything here has
  const least = Math.min(...variances.filter((variance) => variance > 0));
  const weights = variances.map((variance) => 1 / Math.max(variance, least));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = values.reduce((sum, { value }, index) => sum + weights[index]! * value, 0) / total;
  const standardError = Math.sqrt(1 / total);
  const df = spread > 0 ? pooled!.df : Infinity;
  const reach = studentQuantile((1 + level) / 2, df) * standardError;
  return { mean, variance: 1 / total, standardError, interval: [mean - reach, mean + reach], df, n };
}
