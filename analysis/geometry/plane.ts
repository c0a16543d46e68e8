/** A place in a picture or a drawing: x to the right, y down. */
export type PlanePoint = readonly [x: number, y: number];

/** Landmarks by id. A landmark that is not there is not in the map. */
export type Shape = ReadonlyMap<string, PlanePoint>;

/** Distance of two points, in the unit of their coordinates; zero where they coincide. */
export function distanceBetween(from: PlanePoint, to: PlanePoint): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** Point on the straight line between two others: the first at share 0, the second at 1. */
export function pointBetween(from: PlanePoint, to: PlanePoint, share: number): PlanePoint {
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
}

/** Mean of points. Throws without any. */
export function centroid(points: readonly PlanePoint[]): PlanePoint {
  if (points.length === 0) throw new Error('centroid requires at least one point');
  const [x, y] = points.reduce(([sumX, sumY], point) => [sumX + point[0], sumY + point[1]], [0, 0] as const);
  return [x / points.length, y / points.length];
}

/** Twice-signed area of a ring halved: positive where the ring runs clockwise in a picture whose y runs down. */
export function ringArea(ring: readonly PlanePoint[]): number {
  return (
    ring.reduce((sum, [x, y], index) => {
      const [nextX, nextY] = ring[(index + 1) % ring.length]!;
      return sum + x * nextY - nextX * y;
    }, 0) / 2
  );
}

/** Whether a point lies in a ring, by the number of edges that a ray to the left crosses. */
export function isInRing([x, y]: PlanePoint, ring: readonly PlanePoint[]): boolean {
  let inside = false;
  for (let index = 0, before = ring.length - 1; index < ring.length; before = index++) {
    const [ax, ay] = ring[index]!;
    const [bx, by] = ring[before]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}
