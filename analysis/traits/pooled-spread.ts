/** One within-taxon variance that serves every taxon, on the scale of the model, with its degrees of freedom. */
export interface PooledSpread {
  readonly variance: number;
  readonly df: number;
}

/**
 * Pooled variance of values within taxa: squares about the taxon means over Σ(n − 1). The repeats' error is in it
 * already. Undefined where no taxon has two values.
 */
export function findPooledSpread(taxa: readonly (readonly number[])[]): PooledSpread | undefined {
  let squares = 0;
  let df = 0;
  for (const values of taxa) {
    if (values.length < 2) continue;
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    df += values.length - 1;
  }
  return df > 0 ? { variance: squares / df, df } : undefined;
}
