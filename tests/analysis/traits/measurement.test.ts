import { expect, test } from 'vitest';
import {
  angleDegrees,
  angleErrorDegrees,
  compareReadings,
  directionsWithin,
  distanceMm,
  findAxis,
  findNestedComponents,
  findRepeatComponents,
  geometricMean,
  geometricMeanError,
  polylineError,
  polylineMm,
  projectedMm,
  ratioOf,
  turnDirection,
} from '../../../analysis/traits/index.ts';

test('a ratio is scaled with its error, and refuses a whole of 0', () => {
  const [part, whole] = [
    { mm: 3, error: 0.3 },
    { mm: 6, error: 0 },
  ];
  expect(ratioOf(part, whole, { times: 100 })).toEqual({
    value: 50,
    error: expect.closeTo(5, 12) as number,
    logError: expect.closeTo(0.1, 12) as number,
  });
  expect(() => ratioOf(part, { mm: 0, error: 1 })).toThrow('a ratio needs a whole that is not 0');
});

test('an angle in the plane is that between its arms', () => {
  expect(angleDegrees([1, 0], [0, 0], [0, 2])).toBe(90);
  // arms of 1 and 2 with their ends √5 apart: 1 + 1/4 + 5/4
  expect(angleErrorDegrees([1, 0], [0, 0], [0, 2], 0.1)).toBeCloseTo(
    (0.1 * Math.sqrt(2.5) * 180) / Math.PI,
    12,
  );
});

test('an angle near 0 and near 180 degrees keeps its digits', () => {
  // common practice, no source: the sine of so small an angle is the angle
  const tiny = 1e-9;
  expect(angleDegrees([1, 0], [0, 0], [1, tiny]) / ((tiny * 180) / Math.PI)).toBeCloseTo(1, 12);
  expect((180 - angleDegrees([1, 0], [0, 0], [-1, tiny])) / ((tiny * 180) / Math.PI)).toBeCloseTo(1, 4);
  expect(angleDegrees([0, 0], [0, 0], [1, 1])).toBeNaN();
});

test('a polyline counts a shared point once', () => {
  const straight = [
    [0, 0],
    [1, 0],
    [3, 0],
  ] as const;
  // a middle point on a straight line moves nothing
  expect(polylineError(straight, 0.2)).toBeCloseTo(0.2 * Math.SQRT2, 14);
  expect(polylineError([straight[0], straight[1]], 0.2)).toBeCloseTo(0.2 * Math.SQRT2, 14);
  expect([polylineMm([]), polylineMm([[1, 2]])]).toEqual([0, 0]);
});

test('a negative component among specimens is 0, and no repeats give nothing', () => {
  expect(
    findRepeatComponents([
      [1, 9],
      [2, 8],
    ])!,
  ).toMatchObject({ amongComponent: 0, repeatability: 0, percentError: 100 });
  expect(findRepeatComponents([[1], [2], []])).toBeUndefined();
});

test('nested components are those worked out by hand, unequal numbers included', () => {
  // by hand: mean squares 2, 16 and 200; (16 − 2) / 2 = 7 and (200 − 2 − 2 · 7) / 4 = 46
  const balanced = [
    [
      [1, 3],
      [5, 7],
    ],
    [
      [11, 13],
      [15, 17],
    ],
  ];
  expect(findNestedComponents(balanced)).toEqual({
    reading: 2,
    setting: 7,
    specimen: 46,
    readingDf: 4,
    settingDf: 2,
    specimenDf: 1,
  });
  expect(findNestedComponents([[[1, 2, 3]], [[4, 5]]])).toBeUndefined();
  const uneven = findNestedComponents([
    [
      [1, 3, 2],
      [5, 7],
    ],
    [[11, 13]],
    [[20, 21], [25]],
  ])!;
  expect(Object.values(uneven).every((part) => Number.isFinite(part) && part >= 0)).toBe(true);
});

test('a size is the geometric mean with its error, and refuses what has no log', () => {
  expect(geometricMean([2, 8])).toBeCloseTo(4, 14);
  expect(geometricMeanError([2, 8], [0.02, 0.08])).toBeCloseTo((4 * Math.SQRT2 * 0.01) / 2, 14);
  expect(() => geometricMean([3, 0])).toThrow('a size needs measurements above 0, got 0');
  expect(() => geometricMean([])).toThrow('a size needs at least one measurement');
});

test('projected lengths do not change when skull and axis turn together', () => {
  const [from, to, axis] = [[3, 4], [50, 20], turnDirection([1, 0], 10)];
  const turned = (point: readonly number[]) => {
    const size = Math.hypot(...point);
    return turnDirection(
      point.map((part) => part / size),
      37,
    ).map((part) => part * size);
  };
  expect(projectedMm(turned(from!), turned(to!), turnDirection(axis!, 37))).toBeCloseTo(
    projectedMm(from!, to!, axis!),
    12,
  );
  expect(projectedMm(to!, from!, axis!)).toBeCloseTo(-projectedMm(from!, to!, axis!), 12);
  expect(distanceMm([1, 1], [1, 1])).toBe(0);
  expect(() => distanceMm([1, 1], [1, 1, 1])).toThrow('same number of dimensions, got 2 and 3');
});

test('an axis falls back on the best pair that is preserved, turned back by its mean angle', () => {
  const landmarks = new Map([
    ['rim', [0, 0]],
    ['condyle', [10, 0]],
    ['p2', [0, 5]],
    ['m3', [Math.cos(Math.PI / 12) * 8, 5 + Math.sin(Math.PI / 12) * 8]],
  ]);
  const axis = { from: 'rim', to: 'condyle', else: [{ from: 'p2', to: 'm3', turned: 15 }] };
  expect(findAxis(axis, landmarks)).toMatchObject({ choice: 0, direction: [1, 0] });
  landmarks.delete('condyle');
  const fallback = findAxis(axis, landmarks)!;
  expect(fallback.choice).toBe(1);
  expect(fallback.direction[0]).toBeCloseTo(1, 12);
  expect(fallback.direction[1]).toBeCloseTo(0, 12);
  landmarks.delete('m3');
  expect(findAxis(axis, landmarks)).toBeUndefined();
});

test('directions within an angle all stand at that angle', () => {
  for (const direction of [
    [1, 0],
    [0.6, 0.8],
    [0, 0, 1],
    [0.6, 0, 0.8],
  ])
    for (const other of directionsWithin(direction, 6))
      expect(
        angleDegrees(
          direction,
          direction.map(() => 0),
          other,
        ),
      ).toBeCloseTo(6, 10);
  expect(directionsWithin([1, 0], 0)).toEqual([[1, 0]]);
});

test('two readings disagree beyond their combined error', () => {
  const callipers = { value: 240.1, error: 0.2 };
  expect(compareReadings(callipers, { value: 240.8, error: 0.4 }).agree).toBe(true);
  expect(compareReadings(callipers, { value: 241.8, error: 0.4 })).toMatchObject({ agree: false });
});
