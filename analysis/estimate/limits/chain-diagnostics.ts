/** How well several chains of draws agree, and how many independent draws they are worth. */
export interface ChainDiagnostics {
  readonly splitRHat: number;
  readonly effectiveSize: number;
}

/**
 * Split R-hat and effective sample size of chains of equal length, each cut in halves (Gelman, Carlin, Stern, Dunson,
 * Vehtari and Rubin 2013, Bayesian Data Analysis, sections 11.4 and 11.5; sums of pairs of autocorrelations are kept
 * while positive, Geyer 1992). 1 and the number of draws where nothing varies.
 */
export function diagnoseChains(chains: readonly Float64Array[]): ChainDiagnostics {
  const half = Math.floor(chains[0]!.length / 2);
  const parts = chains.flatMap((chain) => [chain.subarray(0, half), chain.subarray(half, 2 * half)]);
  const means = parts.map(meanOf);
  const within = parts.reduce((sum, part, k) => sum + varianceOf(part, means[k]!), 0) / parts.length;
  const grand = means.reduce((sum, mean) => sum + mean, 0) / means.length;
  const between = (half * means.reduce((sum, mean) => sum + (mean - grand) ** 2, 0)) / (means.length - 1);
  const draws = half * parts.length;
  if (!(within > 0)) return { splitRHat: between > 0 ? Infinity : 1, effectiveSize: draws };
  const pooled = ((half - 1) / half) * within + between / half;
  let correlations = 1;
  for (let lag = 1; lag + 1 < half; lag += 2) {
    const pair = correlationAt(parts, lag, pooled) + correlationAt(parts, lag + 1, pooled);
    if (pair <= 0) break;
    correlations += 2 * pair;
  }
  return { splitRHat: Math.sqrt(pooled / within), effectiveSize: Math.min(draws, draws / correlations) };
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k]!;
  return sum / values.length;
}

function varianceOf(values: Float64Array, mean: number): number {
  let squares = 0;
  for (let k = 0; k < values.length; k++) squares += (values[k]! - mean) ** 2;
  return squares / (values.length - 1);
}

/** Autocorrelation at a lag from the mean squared step between draws so far apart. */
function correlationAt(parts: readonly Float64Array[], lag: number, pooled: number): number {
  let steps = 0;
  let count = 0;
  for (const part of parts)
    for (let k = lag; k < part.length; k++, count++) steps += (part[k]! - part[k - lag]!) ** 2;
  return 1 - steps / count / (2 * pooled);
}
