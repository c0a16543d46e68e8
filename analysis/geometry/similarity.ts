import { centroid, type PlanePoint } from './plane.ts';

/** A turn, a scale and a shift of the plane, without reflection: z goes to a z + b, with z, a, b read as complex numbers. */
export interface Similarity {
  readonly a: PlanePoint;
  readonly b: PlanePoint;
}

/** Where a similarity takes a point. */
export function applySimilarity({ a, b }: Similarity, [x, y]: PlanePoint): PlanePoint {
  return [a[0] * x - a[1] * y + b[0], a[1] * x + a[0] * y + b[1]];
}

/**
 * The similarity that lays one list of points on another with the least sum of squares (ordinary Procrustes superimposition
 * in the plane, with scale, without reflection; Dryden & Mardia, Statistical Shape Analysis, complex form). Undefined for
 * fewer than two pairs, or where all points of the first list coincide.
 */
export function findSimilarity(
  from: readonly PlanePoint[],
  to: readonly PlanePoint[],
): Similarity | undefined {
  if (from.length !== to.length)
    throw new Error(`point lists differ in length: ${from.length} and ${to.length}`);
  if (from.length < 2) return undefined;
  const [start, goal] = [centroid(from), centroid(to)];
  let cosine = 0;
  let sine = 0;
  let size = 0;
  from.forEach(([fx, fy], index) => {
    const px = fx - start[0];
    const py = fy - start[1];
    const qx = to[index]![0] - goal[0];
    const qy = to[index]![1] - goal[1];
    cosine += px * qx + py * qy;
    sine += px * qy - py * qx;
    size += px * px + py * py;
  });
  if (size === 0) return undefined;
  const a: PlanePoint = [cosine / size, sine / size];
  const [x, y] = applySimilarity({ a, b: [0, 0] }, start);
  return { a, b: [goal[0] - x, goal[1] - y] };
}
