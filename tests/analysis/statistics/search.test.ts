import { expect, test } from 'vitest';
import { findMaximum, findRoot } from '../../../analysis/statistics/index.ts';

test('findRoot finds the roots of smooth, flat and steep functions', () => {
  expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
  expect(findRoot((x) => Math.cos(x), 0, 3)).toBeCloseTo(Math.PI / 2, 14);
  expect(findRoot((x) => x ** 9, -1, 2)).toBeCloseTo(0, 3);
  expect(findRoot((x) => Math.exp(50 * x) - 1, -1, 2)).toBeCloseTo(0, 12);
  expect(findRoot((x) => x, 0, 1)).toBe(0);
});

test('findRoot refuses ends of one sign', () => {
  expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow('no change of sign between -1 and 1');
});

test('findMaximum finds the top of a peak, also at an end', () => {
  expect(findMaximum((x) => -((x - 0.3) ** 2), -4, 5).at).toBeCloseTo(0.3, 7);
  expect(findMaximum((x) => Math.log(x) - x, 0.01, 9).at).toBeCloseTo(1, 6);
  expect(findMaximum((x) => x, 0, 1).at).toBeCloseTo(1, 6);
  expect(findMaximum(() => 3, 0, 1).value).toBe(3);
});
