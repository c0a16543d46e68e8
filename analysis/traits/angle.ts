import { distanceMm } from './length.ts';
import { dotProduct, vectorBetween, vectorLength, type Point } from './point.ts';

const degreesInRadian = 180 / Math.PI;

/**
 * Angle at a vertex between two other points, degrees from 0 to 180, by the arc tangent of sine and cosine, which
 * keeps its digits near 0 and 180. NaN where a point lies on the vertex.
 */
export function angleDegrees(first: Point, vertex: Point, second: Point): number {
  const one = vectorBetween(vertex, first);
  const other = vectorBetween(vertex, second);
  if (vectorLength(one) === 0 || vectorLength(other) === 0) return NaN;
  return Math.atan2(crossLength(one, other), dotProduct(one, other)) * degreesInRadian;
}

/** Length of the cross product; in two dimensions the area of the parallelogram. */
function crossLength(one: Point, other: Point): number {
  const [a, b, c = 0] = one;
  const [d, e, f = 0] = other;
  return Math.hypot(b! * f - c * e!, c * d! - a! * f, a! * e! - b! * d!);
}

/**
 * Standard error of the angle at a vertex, degrees, where the points are each off by so much in every coordinate:
 * first order, s²(1/a² + 1/c² + b²/(a²c²)) with a and c the arms and b the distance of their ends.
 */
export function angleErrorDegrees(
  first: Point,
  vertex: Point,
  second: Point,
  coordinateError: number,
): number {
  const a = distanceMm(first, vertex);
  const c = distanceMm(second, vertex);
  const b = distanceMm(first, second);
  return coordinateError * Math.sqrt(1 / a ** 2 + 1 / c ** 2 + (b / (a * c)) ** 2) * degreesInRadian;
}
