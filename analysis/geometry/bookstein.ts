import type { PlanePoint } from './plane.ts';

/**
 * Bookstein coordinates: every point in the frame in which the first of two baseline points is (0, 0) and the second
 * (1, 0), y positive to the left of the baseline in a plane whose y runs up (Bookstein 1991, Morphometric Tools for
 * Landmark Data, section 5.1; Dryden and Mardia subtract one half from the first coordinate). Throws where the baseline
 * has no length or an index leads nowhere.
 */
export function booksteinCoordinates(
  points: readonly PlanePoint[],
  baseline: readonly [from: number, to: number],
): PlanePoint[] {
  const [start, end] = [points[baseline[0]], points[baseline[1]]];
  if (!start || !end) throw new Error(`no points at ${baseline.join(' and ')} for a baseline`);
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  const squared = dx * dx + dy * dy;
  if (!(squared > 0)) throw new Error('a baseline requires two points that lie apart');
  return points.map(([x, y]) => {
    const [px, py] = [x - start[0], y - start[1]];
    return [(px * dx + py * dy) / squared, (dx * py - dy * px) / squared];
  });
}
