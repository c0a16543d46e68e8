import { describe, expect, test } from 'vitest';
import {
  fitField,
  shapeAtValue,
  shapeTrend,
  simplifyLine,
  type PlanePoint,
  type Shape,
} from '../../../analysis/geometry/index.ts';

const shapeOf = (value: number): Shape =>
  new Map([
    ['reading', [value, -30 - value * 0.2]],
    ['roof', [10 + value * 0.5, -40 - value * 0.3]],
    ['rear', [200, -20]],
  ]);
const known = [10, 20, 40, 80].map((value) => ({ shape: shapeOf(value), value }));

describe('a trend of shapes', () => {
  const trend = shapeTrend(known);

  test('finds the slopes from which shapes were made', () => {
    const wanted = { reading: [1, -0.2], roof: [0.5, -0.3], rear: [0, 0] };
    for (const [id, slope] of Object.entries(wanted))
      trend.get(id)!.forEach((part, axis) => expect(part).toBeCloseTo(slope[axis]!, 12));
  });

  test('gives the shape at another value, with the reading exactly there', () => {
    const moved = shapeAtValue(shapeOf(41), trend, { reading: 'reading', value: 53, held: new Set() });
    expect(moved.get('reading')![0]).toBe(53);
    expect(moved.get('roof')![0]).toBeCloseTo(shapeOf(53).get('roof')![0], 12);
    expect(moved.get('rear')).toEqual([200, -20]);
  });

  test('leaves held landmarks where they were found', () => {
    const held = new Set(['roof']);
    const moved = shapeAtValue(shapeOf(41), trend, { reading: 'reading', value: 53, held });
    expect(moved.get('roof')).toEqual(shapeOf(41).get('roof'));
  });

  test('says nothing of landmarks in fewer than three shapes, or in shapes of one value', () => {
    expect(shapeTrend(known.slice(0, 2)).size).toBe(0);
    expect(shapeTrend([known[0]!, known[0]!, known[0]!]).size).toBe(0);
    expect(() => shapeAtValue(new Map(), trend, { reading: 'reading', value: 1, held: new Set() })).toThrow(
      'no landmark reading',
    );
  });
});

describe('a simplified line', () => {
  const wave = Array.from({ length: 200 }, (_, step): PlanePoint => [step / 10, Math.sin(step / 10)]);

  test('has fewer points and stays within the tolerance of the old one', () => {
    const short = simplifyLine(wave, 0.02);
    expect(short.length).toBeLessThan(60);
    for (const [x, y] of wave) {
      const after = short.findIndex(([next]) => next >= x);
      const [end, start] = [short[after]!, short[Math.max(0, after - 1)]!];
      const share = end[0] === start[0] ? 0 : (x - start[0]) / (end[0] - start[0]);
      expect(Math.abs(start[1] + (end[1] - start[1]) * share - y)).toBeLessThan(0.03);
    }
  });

  test('keeps both ends, corners, and lines of two points', () => {
    const corner: PlanePoint[] = [
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 1],
      [2, 2],
    ];
    expect(simplifyLine(corner, 0.01)).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
    ]);
    expect(simplifyLine(corner.slice(0, 2), 5)).toEqual(corner.slice(0, 2));
    expect(simplifyLine([], 1)).toEqual([]);
  });
});

describe('a field through values at places', () => {
  const points = [
    { at: [0, 0], value: -1 },
    { at: [10, 0], value: 1 },
    { at: [4, 3], value: 0 },
  ] as const;

  test('has each value at its place, and the mean midway between two', () => {
    const field = fitField(points);
    for (const { at, value } of points) expect(field(at)).toBeCloseTo(value, 10);
    expect(fitField(points.slice(0, 2))([5, 0])).toBeCloseTo(0, 12);
    expect(fitField(points.slice(0, 2))([5, 70])).toBeCloseTo(0, 12);
  });

  test('is flat with one value, and takes the first of two in one place', () => {
    expect(fitField([points[0]])([50, 50])).toBe(-1);
    expect(fitField([...points, { at: [0, 0], value: 5 }])([0, 0])).toBeCloseTo(-1, 10);
    expect(() => fitField([])).toThrow('at least one value');
  });
});
