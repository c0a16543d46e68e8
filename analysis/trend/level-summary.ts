import { normalHazard } from '../statistics/index.ts';

/** One individual of a level: its value, or with `atLeast` only that it was no less, as for a worn crown. */
export interface LevelValue {
  readonly value: number;
  readonly atLeast?: boolean;
}

/** Mean and variance among the individuals of a level, by normal likelihood with the floors in. */
export interface LevelSummary {
  readonly mean: number;
  readonly variance: number;
  /** Whole individuals that would say as much of the mean: the number measured and a part of those with a floor. */
  readonly n: number;
  readonly measured: number;
  readonly floors: number;
}

/** Rounds after which the search gives up; it converges in a few dozen unless nearly all values are floors. */
const mostRounds = 5000;

/**
 * Mean and variance of a level where some individuals only give a floor: largest normal likelihood by expectation and
 * maximisation (Dempster, Laird and Rubin 1977, Journal of the Royal Statistical Society B 39: 1–38), the variance times
 * n/(n − 1); without floors the mean and the usual variance. Undefined with fewer than two measured individuals, or where
 * these are all alike.
 */
export function findLevelSummary(values: readonly LevelValue[]): LevelSummary | undefined {
  const measured = values.filter(({ atLeast }) => !atLeast).map(({ value }) => value);
  const floors = values.filter(({ atLeast }) => atLeast).map(({ value }) => value);
  if (measured.length < 2 || measured.every((value) => value === measured[0])) return undefined;
  const count = values.length;
  let mean = measured.reduce((sum, value) => sum + value, 0) / measured.length;
  let variance = measured.reduce((sum, value) => sum + (value - mean) ** 2, 0) / measured.length;
  for (let round = 0; round < mostRounds && floors.length > 0; round++) {
    const deviation = Math.sqrt(variance);
    let sum = measured.reduce((total, value) => total + value, 0);
    let squares = measured.reduce((total, value) => total + value * value, 0);
    for (const floor of floors) {
      const z = (floor - mean) / deviation;
      const hazard = normalHazard(z);
      const expected = mean + deviation * hazard;
      sum += expected;
      squares += expected * expected + variance * (1 + z * hazard - hazard * hazard);
    }
    const next = sum / count;
    const moved = Math.abs(next - mean);
    mean = next;
    variance = squares / count - mean * mean;
    if (moved < 1e-12 * deviation) break;
  }
  const deviation = Math.sqrt(variance);
  // what a floor says of the mean, as a share of what a measured value says: the curvature of its log-likelihood
  const n = floors.reduce((total, floor) => {
    const z = (floor - mean) / deviation;
    const hazard = normalHazard(z);
    return total + hazard * (hazard - z);
  }, measured.length);
  return {
    mean,
    variance: (variance * count) / (count - 1),
    n,
    measured: measured.length,
    floors: floors.length,
  };
}
