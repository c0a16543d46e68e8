import { describe, expect, test } from 'vitest';
import {
  booksteinCoordinates,
  centroid,
  distanceBetween,
  generalSuperimposition,
  preShape,
  shapeDistance,
  spreadOf,
  superimpose,
  type PlanePoint,
} from '../../../analysis/geometry/index.ts';
import { squaredGap } from '../../../analysis/geometry/procrustes.ts';
import {
  angleOfMeans,
  females,
  firstBookstein,
  firstPair,
  males,
} from '../../reference/geometry-gorillas.ts';
import { triangles } from '../../reference/geometry-splines.ts';

const shapesOf = (rows: readonly (readonly number[])[]): PlanePoint[][] =>
  rows.map((row) =>
    Array.from({ length: row.length / 2 }, (_, index) => [row[2 * index]!, row[2 * index + 1]!]),
  );

function expectPoints(found: readonly PlanePoint[], wanted: readonly (readonly number[])[], digits = 12) {
  expect(found).toHaveLength(wanted.length);
  found.forEach(([x, y], index) => {
    expect(x).toBeCloseTo(wanted[index]![0]!, digits);
    expect(y).toBeCloseTo(wanted[index]![1]!, digits);
  });
}

function moved(points: readonly PlanePoint[], turnRad: number, scale: number): PlanePoint[] {
  const [cosine, sine] = [Math.cos(turnRad) * scale, Math.sin(turnRad) * scale];
  return points.map(([x, y]) => [x * cosine - y * sine + 7, x * sine + y * cosine - 3]);
}

describe('the triangles of Zelditch, Swiderski and Sheets', () => {
  const { first, second } = triangles;

  test('have the printed centroids, sizes and unit shapes', () => {
    expectPoints([centroid(first), centroid(second)], triangles.centroids);
    expect(spreadOf(first)).toBeCloseTo(triangles.sizes[0], 12);
    expect(spreadOf(second)).toBeCloseTo(triangles.sizes[1], 12);
    expectPoints(preShape(first), triangles.unitFirst);
    expectPoints(preShape(second), triangles.unitSecond);
  });

  test('lie at the known angle and distances, after the known turn', () => {
    const distance = shapeDistance(first, second);
    expect(distance.angleRad).toBeCloseTo(triangles.angle, 12);
    expect(distance.partial).toBeCloseTo(triangles.partial, 12);
    expect(distance.full).toBeCloseTo(triangles.full, 12);
    const { turnRad } = superimpose(second, first);
    expect((turnRad * 180) / Math.PI).toBeCloseTo(triangles.turnDegrees, 10);
  });

  test('have the known Bookstein coordinates', () => {
    expectPoints([booksteinCoordinates(first, [0, 1])[2]!], [triangles.bookstein[0]]);
    expectPoints([booksteinCoordinates(second, [0, 1])[2]!], [triangles.bookstein[1]]);
  });
});

describe.each([
  ['female', females],
  ['male', males],
])('%s gorilla skulls', (_, group) => {
  const shapes = shapesOf(group.rows);
  const partial = generalSuperimposition(shapes, 'one');
  const full = generalSuperimposition(shapes, 'fitted');

  test('have the published centroid sizes', () => {
    const mean = partial.centroidSizes.reduce((sum, size) => sum + size, 0) / shapes.length;
    expect(mean).toBeCloseTo(group.meanCentroidSize, 9);
    group.firstSizes.forEach((size, index) => expect(partial.centroidSizes[index]).toBeCloseTo(size, 9));
  });

  test('leave the known sum of squares in the partial and in the full fit', () => {
    // Both references are about the plain mean of the laid shapes, which is a little smaller than size 1.
    const squares = (laid: typeof partial.shapes) => {
      const mean = shapes[0]!.map((_point, landmark) => centroid(laid.map((shape) => shape[landmark]!)));
      return laid.reduce((sum, shape) => sum + squaredGap(shape, mean), 0);
    };
    expect(squares(partial.shapes)).toBeCloseTo(group.partialSquares, 10);
    expect(squares(full.shapes)).toBeCloseTo(group.fullSquares, 10);
  });

  test('lie at the known angles from their mean', () => {
    const angles = shapes.map((shape) => shapeDistance(shape, full.mean).angleRad);
    group.firstAngles.forEach((angle, index) => expect(angles[index]).toBeCloseTo(angle, 8));
    const meanSquare = angles.reduce((sum, angle) => sum + angle ** 2, 0) / angles.length;
    expect(Math.sqrt(meanSquare)).toBeCloseTo(group.rootMeanSquareAngle, 8);
  });

  test('have the known distances between landmarks in their mean shape, with size and without', () => {
    const kept = generalSuperimposition(shapes, 'kept');
    group.fullMeanDistances.forEach((distance, index) =>
      expect(distanceBetween(full.mean[0]!, full.mean[index + 1]!)).toBeCloseTo(distance, 9),
    );
    // The package stops when its mean moves by little; that is five digits here.
    group.keptMeanDistances.forEach((distance, index) =>
      expect(distanceBetween(kept.mean[0]!, kept.mean[index + 1]!)).toBeCloseTo(distance, 2),
    );
  });
});

describe('the two mean gorillas', () => {
  test('lie at the published angle', () => {
    const [female, male] = [females, males].map(
      ({ rows }) => generalSuperimposition(shapesOf(rows), 'fitted').mean,
    );
    expect(shapeDistance(female!, male!).angleRad).toBeCloseTo(angleOfMeans, 9);
  });

  test('start from a pair that superimposes as the package does it', () => {
    const [first, second] = shapesOf(females.rows);
    const distance = shapeDistance(first!, second!);
    expect(distance.angleRad).toBeCloseTo(firstPair.angle, 12);
    expect(distance.full).toBeCloseTo(firstPair.full, 12);
    expect(distance.partial).toBeCloseTo(firstPair.partial, 12);
    const laid = superimpose(second!, first!);
    expect(laid.scale).toBeCloseTo(firstPair.scale, 12);
    expect(laid.squares).toBeCloseTo(firstPair.squares, 8);
    expect(Math.cos(laid.turnRad)).toBeCloseTo(firstPair.turnCosine, 12);
    expect(Math.abs(Math.sin(laid.turnRad))).toBeCloseTo(firstPair.turnSine, 12);
  });

  test('have the published Bookstein coordinates', () => {
    const found = booksteinCoordinates(shapesOf(females.rows)[0]!, [0, 1]);
    expectPoints(
      found.map(([x, y]): PlanePoint => [x - 0.5, y]),
      firstBookstein,
    );
  });
});

describe('a superimposition', () => {
  const shape = Object.freeze(shapesOf(females.rows)[0]!);
  const other = Object.freeze(shapesOf(females.rows)[1]!);

  test('has a distance that place, turn and size do not change', () => {
    const { angleRad } = shapeDistance(shape, other);
    for (const turn of [0.3, Math.PI / 2, 3])
      expect(shapeDistance(shape, moved(other, turn, 2.5)).angleRad).toBeCloseTo(angleRad, 12);
  });

  test('has scales, one way and the other, whose product is the squared cosine of the angle', () => {
    const product = superimpose(shape, other).scale * superimpose(other, shape).scale;
    expect(product).toBeCloseTo(Math.cos(shapeDistance(shape, other).angleRad) ** 2, 12);
  });

  test('does not depend on the order of landmarks', () => {
    const reversed = shapeDistance([...shape].reverse(), [...other].reverse());
    expect(reversed.angleRad).toBeCloseTo(shapeDistance(shape, other).angleRad, 12);
  });

  test('refuses a mirror image unless told otherwise, and says that it would fit', () => {
    const mirror = shape.map(([x, y]): PlanePoint => [-x, y]);
    const refused = superimpose(mirror, shape);
    expect(refused.mirrored).toBe(false);
    expect(refused.fitsBetterMirrored).toBe(true);
    expect(refused.squares).toBeGreaterThan(1000);
    const allowed = superimpose(mirror, shape, { scaling: true, reflection: 'allow' });
    expect(allowed.mirrored).toBe(true);
    expect(allowed.squares).toBeCloseTo(0, 12);
  });

  test('is refused for fewer than three landmarks and for landmarks on one line', () => {
    const line: PlanePoint[] = [
      [0, 0],
      [1, 1 / 3],
      [3, 1],
    ];
    expect(() => superimpose(shape.slice(0, 2), other.slice(0, 2))).toThrow(
      'at least three landmarks, got 2',
    );
    expect(() => shapeDistance(line, shape.slice(0, 3))).toThrow('not all on one line');
    expect(() => superimpose(shape, other.slice(1))).toThrow('the same landmarks, got 8 and 7');
    expect(() => booksteinCoordinates([...line, line[0]!], [0, 3])).toThrow('lie apart');
    expect(() => generalSuperimposition([])).toThrow('at least one shape');
  });
});
