import { expect, test } from 'vitest';
import { rateLine, ratesBetweenLevels, slopesByChance } from '../../../analysis/trend/index.ts';

/** Levels at uneven times, a mean each, twenty animals a level. */
function levelsOf(times: readonly number[], meanAt: (myr: number) => number, logDeviation = 0.05) {
  return times.map((elapsedMyr) => ({
    elapsedMyr,
    sample: { mean: meanAt(elapsedMyr), logDeviation, n: 20 },
  }));
}
const times = [0, 0.1, 0.25, 0.3, 0.6, 1, 1.3, 1.9, 2.2, 3];
const many = Array.from({ length: 30 }, (_, k) => 0.1 * k + 0.03 * Math.sin(7 * k));

test('all pairs of levels are taken, the shortest interval first, without direction', () => {
  const { pairs, total } = ratesBetweenLevels(
    levelsOf(times, (myr) => 10 * Math.exp(-0.2 * myr)),
    500,
  );
  expect(total).toBe(45);
  expect(pairs).toHaveLength(45);
  expect(pairs.map(({ intervalMyr }) => intervalMyr)).toEqual(
    pairs.map(({ intervalMyr }) => intervalMyr).toSorted((a, b) => a - b),
  );
  for (const { darwins } of pairs) expect(darwins).toBeCloseTo(0.2, 12);
});

test('change at a steady rate has a slope of 0, and a difference that no time alters one of −1', () => {
  const steady = ratesBetweenLevels(
    levelsOf(times, (myr) => 10 * Math.exp(0.2 * myr)),
    500,
  );
  expect(rateLine(steady.pairs)!.slope).toBeCloseTo(0, 10);
  const still = steady.pairs.map((pair) => ({ ...pair, darwins: 0.07 / pair.intervalMyr }));
  const line = rateLine(still)!;
  expect(line.slope).toBeCloseTo(-1, 12);
  expect(Math.exp(line.intercept)).toBeCloseTo(0.07, 12);
});

test('the slope does not change when time is counted in another unit', () => {
  const { pairs } = ratesBetweenLevels(
    levelsOf(times, (myr) => 10 + Math.sin(3 * myr)),
    500,
  );
  const years = pairs.map(({ intervalMyr, darwins }) => ({
    intervalMyr: 1e6 * intervalMyr,
    darwins: darwins / 1e6,
  }));
  expect(rateLine(years)!.slope).toBeCloseTo(rateLine(pairs)!.slope, 10);
});

test('chance alone gives about −1, and a walk without direction about −½ (Gingerich 1993, the slopes from memory)', () => {
  const levels = levelsOf(many, () => 10);
  const { pairs } = ratesBetweenLevels(levels, 500);
  const question = { levels, pairs, draws: 199, seed: 1 };
  const still = slopesByChance({ ...question, walkVariance: 0 })!;
  const walk = slopesByChance({ ...question, walkVariance: 50 })!;
  expect(Math.abs(still.middle + 1)).toBeLessThan(0.05);
  expect(Math.abs(walk.middle + 0.5)).toBeLessThan(0.1);
  for (const { middle, range } of [still, walk]) {
    expect(range[0]).toBeLessThan(middle);
    expect(range[1]).toBeGreaterThan(middle);
  }
});

test('the same seed gives the same slopes, another seed others', () => {
  const levels = levelsOf(times, () => 10);
  const { pairs } = ratesBetweenLevels(levels, 500);
  const from = (seed: number) => slopesByChance({ levels, pairs, walkVariance: 1, draws: 19, seed });
  expect(from(1)).toEqual(from(1));
  expect(from(1)).not.toEqual(from(2));
});

test('many pairs are thinned evenly, and their number is kept', () => {
  const levels = levelsOf(many, (myr) => 10 + myr);
  const { pairs, total } = ratesBetweenLevels(levels, 50);
  expect(total).toBe(435);
  expect(pairs).toHaveLength(50);
  const all = ratesBetweenLevels(levels, 1000).pairs;
  expect(pairs[0]).toEqual(all[0]);
  expect(pairs.at(-1)!.intervalMyr).toBeGreaterThan(all[400]!.intervalMyr);
});

test('levels of one age make no pair, and too few pairs or one interval no line', () => {
  expect(
    ratesBetweenLevels(
      levelsOf([0, 0, 1], () => 10),
      9,
    ).total,
  ).toBe(2);
  const pair = (intervalMyr: number, darwins: number) => ({ intervalMyr, darwins });
  expect(rateLine([])).toBeUndefined();
  expect(rateLine([pair(1, 0.1), pair(2, 0.1), pair(3, 0)])).toBeUndefined();
  expect(rateLine([pair(2, 0.1), pair(2, 0.2), pair(2, 0.3)])).toBeUndefined();
});
