import { studentQuantile } from '../../../analysis/statistics/index.ts';

/** A specimen's value on the scale of the model, with the extra variance of an approximate one. */
export interface ScaledValue {
  value: number;
  extraVariance: number;
  sex: string;
}

/** The one within-taxon variance of a trait, on the scale of the model, with its degrees of freedom. */
export interface PooledSpread {
  variance: number;
  df: number;
}

/** Mean of a taxon on the scale of the model, the variance of that mean, and its 95% interval where spread is known. */
export interface TaxonMean {
  mean: number;
  variance: number;
  standardError: number | null;
  df: number | null;
  interval: [number, number] | null;
}

/**
 * Pooled within-group variance, Σ(n − 1)s² / Σ(n − 1), over taxa; approximate values take no part.
 * A taxon with three or more of each sex is pooled by sex. Undefined where no group has two values.
 */
export function poolSpread(taxa: readonly (readonly ScaledValue[])[]): PooledSpread | undefined {
  let squares = 0;
  let df = 0;
  for (const group of taxa.flatMap(bySex)) {
    const values = group.filter((each) => each.extraVariance === 0).map((each) => each.value);
    if (values.length < 2) continue;
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    df += values.length - 1;
  }
  return df > 0 ? { variance: squares / df, df } : undefined;
}

function bySex(taxon: readonly ScaledValue[]): (readonly ScaledValue[])[] {
  const females = taxon.filter((each) => each.sex === 'female');
  const males = taxon.filter((each) => each.sex === 'male');
  if (females.length < 3 || males.length < 3) return [taxon];
  return [females, males, taxon.filter((each) => each.sex !== 'female' && each.sex !== 'male')];
}

/**
 * Mean of the specimens of one taxon, each weighted by 1/(s² + its own extra variance), with the 95% interval of
 * Student's t on the degrees of freedom of the pooled spread. Without a spread the interval is null.
 */
export function taxonMean(values: readonly ScaledValue[], spread: PooledSpread | undefined): TaxonMean {
  const variances = values.map((each) => (spread?.variance ?? 0) + each.extraVariance);
  if (spread === undefined || variances.some((variance) => variance === 0)) {
    const mean = values.reduce((sum, each) => sum + each.value, 0) / values.length;
    const known = spread !== undefined;
    return {
      mean,
      variance: 0,
      standardError: known ? 0 : null,
      df: spread?.df ?? null,
      interval: known ? [mean, mean] : null,
    };
  }
  const weight = variances.reduce((sum, variance) => sum + 1 / variance, 0);
  const mean = values.reduce((sum, each, index) => sum + each.value / variances[index]!, 0) / weight;
  const standardError = Math.sqrt(1 / weight);
  const half = studentQuantile(0.975, spread.df) * standardError;
  return { mean, variance: 1 / weight, standardError, df: spread.df, interval: [mean - half, mean + half] };
}
