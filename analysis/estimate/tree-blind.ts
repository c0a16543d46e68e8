import { studentQuantile } from '../statistics/index.ts';

/**
 * Interval for one more taxon that uses no tree: mean ± t · sd · √(1 + 1/n) of the values, with n − 1 degrees of
 * freedom. Undefined for fewer than two values.
 */
export function findTreeBlindInterval(
  values: readonly number[],
  level: number,
): readonly [number, number] | undefined {
  const count = values.length;
  if (count < 2) return undefined;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const reach =
    studentQuantile((1 + level) / 2, count - 1) * Math.sqrt((squares / (count - 1)) * (1 + 1 / count));
  return [mean - reach, mean + reach];
}
