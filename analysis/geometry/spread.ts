import { centroid, type PlanePoint } from './plane.ts';

/** Points closer together than this share of the spread of all are one point: beyond it no digit is left. */
export const samePlaceShare = 1e-9;

/** Root of the sum of squared distances from the centroid, which is centroid size; zero for one point. */
export function spreadOf(points: readonly PlanePoint[]): number {
  const middle = centroid(points);
  return Math.sqrt(points.reduce((sum, [x, y]) => sum + (x - middle[0]) ** 2 + (y - middle[1]) ** 2, 0));
}

/** Whether all points lie on one line, or in one place, to rounding. True for fewer than three. */
export function isOnOneLine(points: readonly PlanePoint[]): boolean {
  if (points.length < 3) return true;
  const middle = centroid(points);
  const scatter = (one: 0 | 1, other: 0 | 1) =>
    points.reduce((sum, point) => sum + (point[one] - middle[one]) * (point[other] - middle[other]), 0);
  const [xx, xy, yy] = [scatter(0, 0), scatter(0, 1), scatter(1, 1)];
  // Twice the smaller eigenvalue of the scatter, against the whole.
  const across = xx + yy - Math.hypot(xx - yy, 2 * xy);
  return !(across > (xx + yy) * samePlaceShare ** 1.5);
}
