import { directionBetween, dotProduct, vectorBetween, vectorLength, type Point } from './point.ts';

/** Straight distance between two points, mm. Zero for a point and itself. */
export function distanceMm(from: Point, to: Point): number {
  return vectorLength(vectorBetween(from, to));
}

/** Length of the line through points in order, mm. Zero for fewer than two. */
export function polylineMm(points: readonly Point[]): number {
  return points.slice(1).reduce((sum, point, index) => sum + distanceMm(points[index]!, point), 0);
}

/**
 * Length along a direction from one point to another, mm: negative where the second lies behind the first. The
 * direction has length 1.
 */
export function projectedMm(from: Point, to: Point, direction: Point): number {
  return dotProduct(vectorBetween(from, to), direction);
}

/**
 * Standard error of the length of the line through points that are each off by so much in every coordinate, to first
 * order by the full gradient, because two pieces share the point between them. √2 of the error for a straight distance.
 */
export function polylineError(points: readonly Point[], coordinateError: number): number {
  let squares = 0;
  points.forEach((point, index) => {
    const before = index > 0 ? directionBetween(points[index - 1]!, point) : undefined;
    const after = index < points.length - 1 ? directionBetween(point, points[index + 1]!) : undefined;
    for (let axis = 0; axis < point.length; axis++)
      squares += ((before?.[axis] ?? 0) - (after?.[axis] ?? 0)) ** 2;
  });
  return coordinateError * Math.sqrt(squares);
}
