/** A place in two or three dimensions, in millimetres; two points that meet must have as many. */
export type Point = readonly number[];

/** Vector from one point to another. Throws where one has more dimensions than the other. */
export function vectorBetween(from: Point, to: Point): number[] {
  if (from.length !== to.length)
    throw new Error(`points must have the same number of dimensions, got ${from.length} and ${to.length}`);
  return from.map((start, axis) => to[axis]! - start);
}

/** Sum of the products of two vectors' parts. */
export function dotProduct(one: Point, other: Point): number {
  return one.reduce((sum, part, axis) => sum + part * other[axis]!, 0);
}

/** Length of a vector. */
export function vectorLength(vector: Point): number {
  return Math.hypot(...vector);
}

/** Vector of length 1 from one point towards another. Throws where they coincide. */
export function directionBetween(from: Point, to: Point): number[] {
  const vector = vectorBetween(from, to);
  const length = vectorLength(vector);
  if (!(length > 0)) throw new Error('an axis needs two points that lie apart');
  return vector.map((part) => part / length);
}
