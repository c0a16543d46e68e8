import { chiSquareUpperTail, studentUpperTail } from '../statistics/index.ts';

/** Whether one pooled spread is fair to every taxon. Probabilities are NaN where too few taxa have spread. */
export interface SpreadCheck {
  /** Probability of spreads as unequal as these if all were one: Bartlett's test. */
  readonly unequal: number;
  /** Slope of ln(standard deviation) on ln(mean): about 1 where spread grows with the mean, and log is the scale. */
  readonly slope: number;
  /** One-tailed probability of such a slope or a steeper one if the true slope is 0. */
  readonly grows: number;
}

/**
 * Tests the spreads of taxa with two values or more for being one (Bartlett 1937, Proceedings of the Royal Society A
 * 160: 268–282) and for growing with the mean (weighted regression). Taxa without spread, or with means of 0 or less, are
 * passed over in the regression.
 */
export function checkSpread(taxa: readonly (readonly number[])[]): SpreadCheck {
  const groups = taxa.filter((values) => values.length > 1).map(summarise);
  return {
    unequal: bartlett(groups),
    ...growth(groups.filter(({ mean, variance }) => mean > 0 && variance > 0)),
  };
}

interface Group {
  readonly df: number;
  readonly mean: number;
  readonly variance: number;
}

function summarise(values: readonly number[]): Group {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { df: values.length - 1, mean, variance: squares / (values.length - 1) };
}

function bartlett(groups: readonly Group[]): number {
  const df = groups.reduce((sum, group) => sum + group.df, 0);
  if (groups.length < 2 || groups.some(({ variance }) => variance === 0)) return NaN;
  const pooled = groups.reduce((sum, group) => sum + group.df * group.variance, 0) / df;
  const raw =
    df * Math.log(pooled) - groups.reduce((sum, group) => sum + group.df * Math.log(group.variance), 0);
  const inverse = groups.reduce((sum, group) => sum + 1 / group.df, 0) - 1 / df;
  return chiSquareUpperTail(raw / (1 + inverse / (3 * (groups.length - 1))), groups.length - 1);
}

function growth(groups: readonly Group[]): { slope: number; grows: number } {
  if (groups.length < 3) return { slope: NaN, grows: NaN };
  const weight = groups.reduce((sum, { df }) => sum + df, 0);
  const x = groups.map(({ mean }) => Math.log(mean));
  const y = groups.map(({ variance }) => 0.5 * Math.log(variance));
  const centre = (values: readonly number[]) =>
    values.reduce((sum, value, k) => sum + groups[k]!.df * value, 0) / weight;
  const [meanX, meanY] = [centre(x), centre(y)];
  const sum = (of: (k: number) => number) => groups.reduce((total, { df }, k) => total + df * of(k), 0);
  const squareX = sum((k) => (x[k]! - meanX) ** 2);
  if (!(squareX > 0)) return { slope: NaN, grows: NaN };
  const slope = sum((k) => (x[k]! - meanX) * (y[k]! - meanY)) / squareX;
  const rest = sum((k) => (y[k]! - meanY - slope * (x[k]! - meanX)) ** 2) / (groups.length - 2);
  return {
    slope,
    grows: rest > 0 ? studentUpperTail(slope / Math.sqrt(rest / squareX), groups.length - 2) : NaN,
  };
}
