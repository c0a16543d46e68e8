import { findFactors, solveFactored } from './linear-system.ts';
import { distanceBetween, type PlanePoint } from './plane.ts';

/** A value known at a place. */
export interface FieldPoint {
  readonly at: PlanePoint;
  readonly value: number;
}

/**
 * A smooth field through values at places: the sum of weighted distances to all places and a constant, the weights
 * summing to zero (the linear radial function; Wendland 2005, Scattered Data Approximation, chapter 8). Of two points in
 * one place the first counts. A single value is the field everywhere. Throws without any.
 */
export function fitField(given: readonly FieldPoint[]): (point: PlanePoint) => number {
  const points = given.filter(
    ({ at }, index) => given.findIndex((other) => distanceBetween(other.at, at) < 1e-6) === index,
  );
  if (points.length === 0) throw new Error('a field requires at least one value');
  const size = points.length + 1;
  const matrix = new Float64Array(size * size);
  points.forEach((point, row) => {
    points.forEach((other, column) => (matrix[row * size + column] = distanceBetween(point.at, other.at)));
    matrix[row * size + points.length] = 1;
    matrix[points.length * size + row] = 1;
  });
  const factors = findFactors(matrix, size);
  if (!factors) throw new Error('the values of a field do not determine it');
  const weights = solveFactored(factors, [...points.map(({ value }) => value), 0]);
  return (place) =>
    points.reduce(
      (sum, { at }, index) => sum + weights[index]! * distanceBetween(at, place),
      weights.at(-1)!,
    );
}
