import type { PlanePoint } from './plane.ts';

/**
 * A line with fewer points that stays within a tolerance of the old one (Douglas and Peucker 1973, The Canadian
 * Cartographer 10: 112–122). Both ends stay; fewer than three points come back as they are.
 */
export function simplifyLine(points: readonly PlanePoint[], tolerance: number): PlanePoint[] {
  if (points.length < 3) return [...points];
  const kept = new Uint8Array(points.length);
  kept[0] = kept[points.length - 1] = 1;
  const stretches: [number, number][] = [[0, points.length - 1]];
  for (let stretch = stretches.pop(); stretch; stretch = stretches.pop()) {
    const [from, to] = stretch;
    const [farthest, gap] = farthestBetween(points, from, to);
    if (gap <= tolerance) continue;
    kept[farthest] = 1;
    stretches.push([from, farthest], [farthest, to]);
  }
  return points.filter((_, index) => kept[index] === 1);
}

function farthestBetween(points: readonly PlanePoint[], from: number, to: number): [number, number] {
  let [farthest, most] = [from, -1];
  for (let index = from + 1; index < to; index++) {
    const gap = distanceToStretch(points[index]!, points[from]!, points[to]!);
    if (gap > most) [farthest, most] = [index, gap];
  }
  return [farthest, most];
}

/** Distance of a point from the straight stretch between two others. */
export function distanceToStretch([x, y]: PlanePoint, [ax, ay]: PlanePoint, [bx, by]: PlanePoint): number {
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared));
  return Math.hypot(x - ax - dx * share, y - ay - dy * share);
}
