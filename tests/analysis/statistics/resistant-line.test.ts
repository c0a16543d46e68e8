import { describe, expect, it } from 'vitest';
import { findResistantLine, median } from '../../../analysis/statistics/index.ts';

describe('findResistantLine', () => {
  it('has the slope of Sen’s own example', () => {
    // Sen 1968, Journal of the American Statistical Association 63: 1379–1389, his example; data and slope 4 from memory.
    const times = [1, 2, 3, 4, 10, 12, 18];
    const values = [9, 15, 19, 20, 45, 55, 78];
    expect(findResistantLine(times.map((time, index) => [time, values[index]!]))!.slope).toBe(4);
  });

  it('passes through points of a line, a quarter of them replaced', () => {
    const points = Array.from({ length: 12 }, (_, x): [number, number] => [
      x,
      x % 4 === 1 ? 1000 : 3 - 0.5 * x,
    ]);
    const line = findResistantLine(points)!;
    expect(line.slope).toBeCloseTo(-0.5, 12);
    expect(line.intercept).toBeCloseTo(3, 12);
  });

  it('takes no longer for many points than for two hundred, and finds the same line', () => {
    const points = Array.from({ length: 20_000 }, (_, x): [number, number] => [x, 2 * x + 1]);
    const started = performance.now();
    expect(findResistantLine(points)!.slope).toBeCloseTo(2, 12);
    expect(performance.now() - started).toBeLessThan(1000);
  });

  it('is undefined where no two points differ in x', () => {
    expect(findResistantLine([])).toBeUndefined();
    expect(findResistantLine([[1, 2]])).toBeUndefined();
    expect(
      findResistantLine([
        [1, 2],
        [1, 3],
      ]),
    ).toBeUndefined();
  });
});

describe('median', () => {
  it('is the middle value, the mean of the two middle ones, and NaN of none', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
    expect(median([])).toBeNaN();
  });
});
