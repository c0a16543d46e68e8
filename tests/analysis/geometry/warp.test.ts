import { describe, expect, test } from 'vitest';
import {
  applyWarp,
  distanceBetween,
  findFold,
  fitWarp,
  gridOver,
  isInRing,
  preparePoints,
  ringArea,
  traceCurve,
  warpPoints,
  type PlanePoint,
  type Shape,
} from '../../../analysis/geometry/index.ts';

const square: Shape = new Map([
  ['front-low', [0, 0]],
  ['rear-low', [40, 0]],
  ['rear-high', [40, 40]],
  ['front-high', [0, 40]],
  ['middle', [20, 20]],
]);

const shifted = (middle: PlanePoint): Shape => new Map([...square, ['middle', middle]]);

describe('a chain of short splines', () => {
  test('has one spline for each twelve units that the landmark with the longest way goes', () => {
    expect(fitWarp(square, square).steps).toHaveLength(1);
    expect(fitWarp(square, shifted([20, 31])).steps).toHaveLength(1);
    expect(fitWarp(square, shifted([20, -5])).steps).toHaveLength(3);
    expect(fitWarp(square, shifted([20, 31]), 2).steps).toHaveLength(6);
  });

  test('ends with every landmark exactly in its place', () => {
    const target = shifted([33, 6]);
    const warp = fitWarp(square, target);
    for (const [id, place] of square)
      expect(distanceBetween(applyWarp(warp, place), target.get(id)!)).toBeLessThan(1e-9);
  });

  test('takes only the landmarks that both shapes have, and at least three of them', () => {
    const part: Shape = new Map([...square].slice(0, 3));
    expect(fitWarp(square, part).landmarks).toEqual(['front-low', 'rear-low', 'rear-high']);
    expect(() => fitWarp(square, new Map([...square].slice(0, 2)))).toThrow(
      'at least three landmarks, got 2',
    );
  });

  test('leaves flat what one long spline folds', () => {
    const target = shifted([20, 52]);
    const grid = gridOver([...square.values()], 1);
    expect(findFold(fitWarp(square, target, 100), grid)).toBeDefined();
    expect(findFold(fitWarp(square, target, 2), grid)).toBeUndefined();
  });
});

describe('a fold', () => {
  test('is found where a landmark passes its neighbours, with the two next to it', () => {
    const fold = findFold(fitWarp(square, shifted([20, 90]), 100), gridOver([...square.values()], 2))!;
    expect(fold.area).toBeLessThanOrEqual(0);
    expect(fold.between).toHaveLength(2);
    expect(fold.between.every((id) => square.has(id))).toBe(true);
  });

  test('is found everywhere in a mirror image', () => {
    const mirror: Shape = new Map([...square].map(([id, [x, y]]) => [id, [40 - x, y]]));
    expect(findFold(fitWarp(square, mirror, 100), [[3, 5]])?.area).toBeCloseTo(-1, 9);
  });

  test('is not found in a shape that only grows', () => {
    const double: Shape = new Map([...square].map(([id, [x, y]]) => [id, [2 * x, 2 * y]]));
    expect(findFold(fitWarp(square, double), gridOver([...square.values()], 5))).toBeUndefined();
  });
});

describe('a curve', () => {
  const circle = Array.from({ length: 24 }, (_, step): PlanePoint => [
    10 * Math.cos((step * Math.PI) / 12),
    10 * Math.sin((step * Math.PI) / 12),
  ]);

  test('through points of a circle stays on the circle to a thousandth of its radius, also where it closes', () => {
    const { points } = traceCurve([...circle, circle[0]!], 0.2);
    expect(points.length).toBeGreaterThan(250);
    for (const point of points) expect(Math.abs(Math.hypot(...point) - 10)).toBeLessThan(0.01);
  });

  test('through the corners of a square, all sharp, is the square', () => {
    const sharp: PlanePoint[] = [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
      [0, 0],
    ];
    const { points, corners } = traceCurve(
      sharp.flatMap((stop) => [stop, 'corner' as const]),
      0.5,
    );
    expect(corners.map((index) => points[index])).toEqual(sharp);
    for (const [x, y] of points)
      expect(Math.min(Math.abs(x), Math.abs(x - 4), Math.abs(y), Math.abs(y - 4))).toBeLessThan(1e-12);
  });

  test('passes through every one of its points', () => {
    const course: PlanePoint[] = [
      [0, 0],
      [1, 3],
      [1.2, 3.1],
      [8, -2],
      [9, 9],
    ];
    const { points } = traceCurve(course, 0.3);
    for (const stop of course)
      expect(Math.min(...points.map((point) => distanceBetween(point, stop)))).toBeLessThan(1e-9);
  });

  test('makes no loop between points at unlike distances', () => {
    const { points } = traceCurve(
      [
        [0, 0],
        [10, 0],
        [10.2, 0.4],
        [20, 0.4],
      ],
      0.05,
    );
    const back = points.slice(1).filter(([x], index) => x < points[index]![0] - 1e-9);
    expect(back).toEqual([]);
  });

  test('needs two points', () => {
    expect(() => traceCurve([[1, 1]], 1)).toThrow('at least two points');
  });
});

describe('places in the plane', () => {
  const ring: PlanePoint[] = [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ];

  test('have the area of a rectangle and of a circle', () => {
    expect(ringArea(ring)).toBe(12);
    expect(ringArea([...ring].reverse())).toBe(-12);
    const circle = Array.from({ length: 720 }, (_, step): PlanePoint => [
      Math.cos((step * Math.PI) / 360),
      Math.sin((step * Math.PI) / 360),
    ]);
    expect(ringArea(circle)).toBeCloseTo(Math.PI, 4);
  });

  test('lie inside a ring or outside it', () => {
    expect(isInRing([1, 1], ring)).toBe(true);
    expect(isInRing([5, 1], ring)).toBe(false);
    expect(isInRing([1, 1], [])).toBe(false);
  });
});

describe('many points at once', () => {
  const points = gridOver([...square.values()], 3);

  test('stand where the warp puts each of them, prepared or not', () => {
    for (const target of [shifted([24, 23]), shifted([33, 6]), shifted([20, 31])]) {
      const warp = fitWarp(square, target);
      for (const source of [[...square.values()], [...shifted([0, 1]).values()]]) {
        const { x, y } = warpPoints(warp, preparePoints(points, source));
        points.forEach((point, index) => {
          const [wantedX, wantedY] = applyWarp(warp, point);
          expect(Math.hypot(x[index]! - wantedX, y[index]! - wantedY)).toBeLessThan(1e-9);
        });
      }
    }
  });

  test('may be none, and leave the prepared ones as they are', () => {
    const warp = fitWarp(square, shifted([33, 6]));
    expect(warpPoints(warp, preparePoints([], [...square.values()])).x).toHaveLength(0);
    const prepared = preparePoints(points, [...square.values()]);
    warpPoints(warp, prepared);
    expect([...prepared.run.x]).toEqual(points.map(([x]) => x));
  });
});
