import { expect, test } from 'vitest';
import { distancesRoom, fillDistances } from '../../../analysis/geometry/squared-distances.ts';

/** Squared distances from zero of points on one line, with their logarithms. */
function distancesOf(across: readonly number[]): { squared: number[]; logs: number[] } {
  const room = distancesRoom(across.length);
  const run = { x: Float64Array.from(across), y: new Float64Array(across.length) };
  fillDistances(run, [0, 0], room);
  return { squared: [...room.squared], logs: [...room.logs] };
}

test('logarithms of squared distances are twice those of the handbook', () => {
  // Abramowitz and Stegun (1964), Handbook of Mathematical Functions, table 1.1; digits from memory.
  const handbook: readonly [number, number][] = [
    [2, 0.693147180559945309],
    [3, 1.098612288668109691],
    [5, 1.609437912434100375],
    [7, 1.945910149055313305],
    [10, 2.302585092994045684],
  ];
  distancesOf(handbook.map(([distance]) => distance)).logs.forEach((log, index) =>
    expect(Math.abs(log / 2 - handbook[index]![1])).toBeLessThan(5e-16),
  );
});

test('logarithms of squared distances keep every digit, from the smallest normal number to the largest', () => {
  const wide = Array.from({ length: 100_003 }, (_, index) => Math.exp((index / 100_003) * 708 - 354));
  const nearOne = Array.from({ length: 20_000 }, (_, index) => 0.9 + index / 100_000);
  const { squared, logs } = distancesOf([...wide, ...nearOne, 1, 2 ** -511, 1.3e154]);
  logs.forEach((log, index) => {
    const wanted = Math.log(squared[index]!);
    if (Math.abs(log - wanted) > 4.5e-16 * Math.max(1, Math.abs(wanted)))
      expect.fail(`log of ${squared[index]} is ${log}, not ${wanted}`);
  });
});

test('a point on the landmark has a squared distance of zero and a finite logarithm', () => {
  const { squared, logs } = distancesOf([0, 3]);
  expect(squared).toEqual([0, 9]);
  expect(squared[0]! * logs[0]! + 0).toBe(0);
});

test('a short run after a long one is told apart from it', () => {
  distancesOf(Array.from({ length: 3000 }, (_, index) => index));
  expect(distancesOf([4]).logs).toEqual(distancesOf([4, 5]).logs.slice(0, 1));
});
