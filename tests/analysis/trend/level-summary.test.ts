import { expect, test } from 'vitest';
import { findLevelSummary, type LevelValue } from '../../../analysis/trend/index.ts';
import { logNormalUpperTail } from '../../../analysis/statistics/index.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';

const values = [4.1, 3.9, 4.6, 4.3, 4.0, 4.4, 3.7].map((value) => ({ value }));
const worn = [3.8, 4.2, 4.5].map((value) => ({ value, atLeast: true }));

test('without floors a level has the mean and the usual variance of its individuals', () => {
  const level = findLevelSummary(values)!;
  const mean = values.reduce((sum, { value }) => sum + value, 0) / 7;
  expect(level.mean).toBeCloseTo(mean, 14);
  expect(level.variance).toBeCloseTo(values.reduce((sum, { value }) => sum + (value - mean) ** 2, 0) / 6, 14);
  expect(level).toMatchObject({ n: 7, measured: 7, floors: 0 });
});

test('with floors no other mean and variance are more likely', () => {
  const level = findLevelSummary([...values, ...worn])!;
  const likelihood = (mean: number, variance: number) =>
    values.reduce(
      (sum, { value }) => sum - 0.5 * Math.log(variance) - (value - mean) ** 2 / (2 * variance),
      0,
    ) + worn.reduce((sum, { value }) => sum + logNormalUpperTail((value - mean) / Math.sqrt(variance)), 0);
  const variance = (level.variance * 9) / 10;
  const best = likelihood(level.mean, variance);
  for (const [shift, stretch] of [
    [0.001, 1],
    [-0.001, 1],
    [0, 1.003],
    [0, 0.997],
    [0.001, 0.997],
  ] as const)
    expect(likelihood(level.mean + shift, variance * stretch)).toBeLessThan(best);
  expect(level.mean).toBeGreaterThan(findLevelSummary(values)!.mean);
  expect(level.n).toBeGreaterThan(7);
  expect(level.n).toBeLessThan(10);
});

test('a floor far below everything says nothing, and the order of individuals does not matter', () => {
  const low: LevelValue[] = [...values, { value: -50, atLeast: true }];
  expect(findLevelSummary(low)!.n).toBeCloseTo(7, 10);
  expect(findLevelSummary(low)!.mean).toBeCloseTo(findLevelSummary(values)!.mean, 10);
  expect(findLevelSummary([...worn, ...values])!.mean).toBeCloseTo(
    findLevelSummary([...values, ...worn])!.mean,
    10,
  );
});

test('worn crowns left out pull the mean down; let in as floors they do not', () => {
  let [kept, left] = [0, 0];
  const sets = 400;
  for (let set = 0; set < sets; set++) {
    const random = seededRandom('worn', set);
    // crowns wear alike whatever their height: a worn one was at least as high as what is left
    const level = Array.from({ length: 40 }, (): LevelValue => {
      const height = 10 + normalDraw(random);
      const remains = 9 + 2 * random();
      return height > remains ? { value: remains, atLeast: true } : { value: height };
    });
    kept += findLevelSummary(level)!.mean / sets;
    left += findLevelSummary(level.filter(({ atLeast }) => !atLeast))!.mean / sets;
  }
  expect(Math.abs(kept - 10)).toBeLessThan(0.06);
  expect(left).toBeLessThan(9.7);
});

test('a level with one measured individual, or with all alike, has no summary', () => {
  expect(findLevelSummary([{ value: 3 }, ...worn])).toBeUndefined();
  expect(findLevelSummary([{ value: 3 }, { value: 3 }])).toBeUndefined();
  expect(findLevelSummary([])).toBeUndefined();
});
