import { moveWithAreas } from './area-run.ts';
import { distanceBetween, type PlanePoint } from './plane.ts';
import { pointRun } from './warp-points.ts';
import type { Warp } from './warp.ts';

/** A place where a warp turns the plane over, and the two landmarks next to it. */
export interface Fold {
  /** In the shape that the warp starts from. */
  readonly at: PlanePoint;
  /** Change of area there: zero or less. */
  readonly area: number;
  readonly between: readonly [string, string];
}

/**
 * First of the given points at which a warp folds: where the determinant of its derivatives, step by step, is zero or
 * less. Undefined where it folds at none of them; between the points it is not looked at.
 */
export function findFold(warp: Warp, points: readonly PlanePoint[]): Fold | undefined {
  const areas = smallestAreas(warp, points);
  const first = areas.findIndex((area) => !(area > 0));
  const at = points[first];
  return at && { at, area: areas[first]!, between: nearestPair(warp, at) };
}

/** At each point, the smallest area of all the splines of a chain. */
function smallestAreas({ steps }: Warp, points: readonly PlanePoint[]): Float64Array {
  const run = pointRun(points);
  const smallest = new Float64Array(points.length).fill(Infinity);
  for (const spline of steps)
    moveWithAreas(spline, run).forEach((area, point) => {
      // Written so that no number at all counts as a fold too.
      if (!(area >= smallest[point]!)) smallest[point] = area;
    });
  return smallest;
}

function nearestPair({ landmarks, steps }: Warp, at: PlanePoint): readonly [string, string] {
  const places = steps[0]!.source;
  const [first, second] = landmarks
    .map((id, index) => ({ id, distance: distanceBetween(at, places[index]!) }))
    .sort((one, other) => one.distance - other.distance);
  return [first!.id, second!.id];
}

/** Points of a square grid over the box of some points, `spacing` apart. */
export function gridOver(points: readonly PlanePoint[], spacing: number): PlanePoint[] {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const columns = Math.floor((Math.max(...xs) - left) / spacing) + 1;
  const rows = Math.floor((Math.max(...ys) - top) / spacing) + 1;
  return Array.from({ length: columns * rows }, (_, index) => [
    left + (index % columns) * spacing,
    top + Math.floor(index / columns) * spacing,
  ]);
}
