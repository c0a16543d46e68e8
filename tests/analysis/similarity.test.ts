import { expect, test } from 'vitest';
import type { PlanePoint } from '../../analysis/geometry/plane.ts';
import { applySimilarity, findSimilarity } from '../../analysis/geometry/similarity.ts';

const triangle: readonly PlanePoint[] = [
  [-1, -1],
  [1, -1],
  [0, 1],
];
const other: readonly PlanePoint[] = [
  [1.07, -1.64],
  [3.1, -0.72],
  [1.55, 0.82],
];

test('a similarity finds the turn between the published triangles', () => {
  // Zelditch, Swiderski & Sheets, Geometric Morphometrics for Biologists, ch. 3: the two triangles; the rotation of
  // 19.175853579836367 degrees was computed from them by general statistics code.
  const { a } = findSimilarity(triangle, other)!;
  expect((Math.atan2(a[1], a[0]) * 180) / Math.PI).toBeCloseTo(19.175853579836367, 10);
});

test('a similarity undoes a known turn, scale and shift', () => {
  const known = { a: [1.2, -0.7], b: [5, 3] } as const;
  const moved = triangle.map((point) => applySimilarity(known, point));
  const back = findSimilarity(moved, triangle)!;
  moved.forEach((point, index) => {
    const [x, y] = applySimilarity(back, point);
    expect(x).toBeCloseTo(triangle[index]![0], 12);
    expect(y).toBeCloseTo(triangle[index]![1], 12);
  });
});

test('a similarity never reflects: a mirrored shape is only turned', () => {
  const mirrored = triangle.map(([x, y]): PlanePoint => [-x, y + x * 0.2]);
  const { a } = findSimilarity(triangle, mirrored)!;
  expect(a[0] * a[0] + a[1] * a[1]).toBeGreaterThan(0);
});

test('fewer than two pairs and coinciding points have no similarity', () => {
  expect(findSimilarity([[0, 0]], [[1, 1]])).toBeUndefined();
  expect(
    findSimilarity(
      [
        [2, 2],
        [2, 2],
      ],
      other.slice(0, 2),
    ),
  ).toBeUndefined();
});
