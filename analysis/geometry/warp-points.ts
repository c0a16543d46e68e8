import type { PlanePoint } from './plane.ts';
import { distancesRoom, fillDistances, type PointRun } from './squared-distances.ts';
import type { ThinPlateSpline } from './thin-plate-spline.ts';
import type { Warp } from './warp.ts';

/** Points as runs of x and y. */
export function pointRun(points: readonly PlanePoint[]): PointRun {
  return { x: Float64Array.from(points, ([x]) => x), y: Float64Array.from(points, ([, y]) => y) };
}

/** Kernels of many points for the landmarks of one shape: what every spline from that shape has in common. */
export interface PreparedPoints {
  readonly run: PointRun;
  readonly source: readonly PlanePoint[];
  /** A row of kernels for each landmark. */
  readonly kernels: Float64Array;
}

/** Prepares points of a template once, for the splines to any number of animals. Memory grows with points times landmarks. */
export function preparePoints(points: readonly PlanePoint[], source: readonly PlanePoint[]): PreparedPoints {
  const run = pointRun(points);
  const count = points.length;
  const kernels = new Float64Array(count * source.length);
  const room = distancesRoom(count);
  source.forEach((place, landmark) => {
    fillDistances(run, place, room);
    for (let point = 0; point < count; point++)
      kernels[landmark * count + point] = room.squared[point]! * room.logs[point]!;
  });
  return { run, source, kernels };
}

/**
 * Where a warp puts many points: the same numbers as `applyWarp` gives for each, up to rounding, several times faster. The
 * first spline of the chain uses prepared kernels where it starts from the shape that they were prepared for.
 */
export function warpPoints({ steps }: Warp, prepared: PreparedPoints): PointRun {
  const run = { x: prepared.run.x.slice(), y: prepared.run.y.slice() };
  steps.forEach((spline, index) => {
    if (index === 0 && isSameShape(spline.source, prepared.source)) startRun(spline, prepared, run);
    else moveRun(spline, run);
  });
  return run;
}

function isSameShape(one: readonly PlanePoint[], other: readonly PlanePoint[]): boolean {
  return (
    one.length === other.length &&
    one.every(([x, y], index) => x === other[index]![0] && y === other[index]![1])
  );
}

function startRun(spline: ThinPlateSpline, { kernels }: PreparedPoints, run: PointRun): void {
  const { x, y } = run;
  const count = x.length;
  affineRun(spline, run);
  for (let landmark = 0; landmark < spline.weights.length; landmark++) {
    const [weightX, weightY] = spline.weights[landmark]!;
    const row = landmark * count;
    for (let point = 0; point < count; point++) {
      const bend = kernels[row + point]!;
      x[point]! += weightX * bend;
      y[point]! += weightY * bend;
    }
  }
}

/** Moves a run by one spline, landmark by landmark, so that the inner loops touch typed arrays alone. */
function moveRun(spline: ThinPlateSpline, run: PointRun): void {
  const from = { x: run.x.slice(), y: run.y.slice() };
  const { x, y } = run;
  const room = distancesRoom(x.length);
  const { squared, logs } = room;
  affineRun(spline, run);
  for (let landmark = 0; landmark < spline.weights.length; landmark++) {
    const [weightX, weightY] = spline.weights[landmark]!;
    fillDistances(from, spline.source[landmark]!, room);
    for (let point = 0; point < x.length; point++) {
      const bend = squared[point]! * logs[point]!;
      x[point]! += weightX * bend;
      y[point]! += weightY * bend;
    }
  }
}

function affineRun({ affine: [constant, byX, byY] }: ThinPlateSpline, { x, y }: PointRun): void {
  for (let point = 0; point < x.length; point++) {
    const beforeX = x[point]!;
    const beforeY = y[point]!;
    x[point] = constant[0] + byX[0] * beforeX + byY[0] * beforeY;
    y[point] = constant[1] + byX[1] * beforeX + byY[1] * beforeY;
  }
}
