import type { PlanePoint } from './plane.ts';
import type { ThinPlateSpline } from './thin-plate-spline.ts';
import type { Warp } from './warp.ts';

/** x and y of many points, apart, to be moved in place. */
export interface PointRun {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

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
  source.forEach(([landmarkX, landmarkY], landmark) => {
    for (let point = 0; point < count; point++) {
      const dx = run.x[point]! - landmarkX;
      const dy = run.y[point]! - landmarkY;
      const squared = dx * dx + dy * dy;
      kernels[landmark * count + point] = squared === 0 ? 0 : squared * Math.log(squared);
    }
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
  spline.weights.forEach(([weightX, weightY], landmark) => {
    const row = landmark * count;
    for (let point = 0; point < count; point++) {
      const bend = kernels[row + point]!;
      x[point]! += weightX * bend;
      y[point]! += weightY * bend;
    }
  });
}

/** Moves a run by one spline, landmark by landmark, so that the inner loop touches typed arrays alone. */
function moveRun(spline: ThinPlateSpline, run: PointRun): void {
  const [fromX, fromY] = [run.x.slice(), run.y.slice()];
  const { x, y } = run;
  affineRun(spline, run);
  spline.source.forEach(([landmarkX, landmarkY], landmark) => {
    const [weightX, weightY] = spline.weights[landmark]!;
    for (let point = 0; point < x.length; point++) {
      const dx = fromX[point]! - landmarkX;
      const dy = fromY[point]! - landmarkY;
      const squared = dx * dx + dy * dy;
      if (squared === 0) continue;
      const bend = squared * Math.log(squared);
      x[point]! += weightX * bend;
      y[point]! += weightY * bend;
    }
  });
}

function affineRun({ affine: [constant, byX, byY] }: ThinPlateSpline, { x, y }: PointRun): void {
  for (let point = 0; point < x.length; point++) {
    const beforeX = x[point]!;
    const beforeY = y[point]!;
    x[point] = constant[0] + byX[0] * beforeX + byY[0] * beforeY;
    y[point] = constant[1] + byX[1] * beforeX + byY[1] * beforeY;
  }
}
