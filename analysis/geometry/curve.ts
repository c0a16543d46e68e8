import { distanceBetween, pointBetween, type PlanePoint } from './plane.ts';

/** A curve as the points that it passes through; at `corner` it may bend sharply in the point before. */
export type CurveCourse = readonly (PlanePoint | 'corner')[];

/** A dense line of points, and where in it the corners are, with the first and the last point. */
export interface Polyline {
  readonly points: readonly PlanePoint[];
  readonly corners: readonly number[];
}

/** Points between two corners, and the neighbours beyond its ends where the curve goes on smoothly. */
interface Run {
  readonly points: readonly PlanePoint[];
  readonly before?: PlanePoint | undefined;
  readonly after?: PlanePoint | undefined;
}

/**
 * Dense points along a centripetal Catmull-Rom curve (Yuksel, Schaefer and Keyser 2011, Computer-Aided Design 43:
 * 747–755: knots by the square root of the distance, so it makes neither cusps nor loops between two points), at most
 * `spacing` apart along the chords. Runs between corners are smoothed apart. A curve that ends where it began is smooth
 * there too, unless a corner follows its first point. Throws for fewer than two points.
 */
export function traceCurve(course: CurveCourse, spacing: number): Polyline {
  const runs = runsBetweenCorners(course);
  const points: PlanePoint[] = [];
  const corners = [0];
  for (const run of runs) {
    run.points.slice(1).forEach((end, index) => points.push(...segment(run, index, end, spacing)));
    corners.push(points.length);
  }
  points.push(runs.at(-1)!.points.at(-1)!);
  return { points, corners };
}

function runsBetweenCorners(course: CurveCourse): Run[] {
  const runs: PlanePoint[][] = [[]];
  for (const stop of course) {
    const run = runs.at(-1)!;
    if (stop !== 'corner') run.push(stop);
    else if (run.length > 0) runs.push([run.at(-1)!]);
  }
  const whole = runs.filter((run) => run.length > 1);
  if (whole.length === 0) throw new Error('a curve requires at least two points');
  return isSmoothRing(course) ? joinedEnds(whole) : whole.map((points) => ({ points }));
}

function isSmoothRing(course: CurveCourse): boolean {
  const [first, second, last] = [course[0], course[1], course.at(-1)];
  if (first === 'corner' || last === 'corner' || !first || !last) return false;
  return course.length > 3 && second !== 'corner' && distanceBetween(first, last) === 0;
}

function joinedEnds(runs: readonly PlanePoint[][]): Run[] {
  const last = runs.length - 1;
  return runs.map((points, index) => ({
    points,
    before: index === 0 ? runs[last]!.at(-2) : undefined,
    after: index === last ? runs[0]![1] : undefined,
  }));
}

/** Points from the start of one segment up to, but not including, its end. */
function segment({ points, ...beyond }: Run, index: number, end: PlanePoint, spacing: number): PlanePoint[] {
  const start = points[index]!;
  const before = points[index - 1] ?? beyond.before ?? mirrored(start, end);
  const after = points[index + 2] ?? beyond.after ?? mirrored(end, start);
  const count = Math.max(2, Math.ceil(distanceBetween(start, end) / spacing));
  const stretch = (one: PlanePoint, other: PlanePoint) =>
    Math.max(1e-4, Math.sqrt(distanceBetween(one, other)));
  const k1 = stretch(before, start);
  const k2 = k1 + stretch(start, end);
  const k3 = k2 + stretch(end, after);
  return Array.from({ length: count }, (_, part) =>
    catmullRom([before, start, end, after], [0, k1, k2, k3], k1 + ((k2 - k1) * part) / count),
  );
}

function mirrored(about: PlanePoint, point: PlanePoint): PlanePoint {
  return [2 * about[0] - point[0], 2 * about[1] - point[1]];
}

/** Value of the curve by the pyramid of Barry and Goldman (1988): three lines, two parabolas through them, one cubic. */
function catmullRom(
  [before, start, end, after]: readonly [PlanePoint, PlanePoint, PlanePoint, PlanePoint],
  [k0, k1, k2, k3]: readonly [number, number, number, number],
  at: number,
): PlanePoint {
  const first = pointBetween(before, start, (at - k0) / (k1 - k0));
  const second = pointBetween(start, end, (at - k1) / (k2 - k1));
  const third = pointBetween(end, after, (at - k2) / (k3 - k2));
  const low = pointBetween(first, second, (at - k0) / (k2 - k0));
  const high = pointBetween(second, third, (at - k1) / (k3 - k1));
  return pointBetween(low, high, (at - k1) / (k2 - k1));
}
