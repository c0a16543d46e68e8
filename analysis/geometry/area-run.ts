import { distancesRoom, fillDistances, type PointRun } from './squared-distances.ts';
import type { ThinPlateSpline } from './thin-plate-spline.ts';

/**
 * Moves a run of points by a spline, in place, and returns by how much it stretches the area at each: the determinant of its
 * derivatives, zero or less where the plane folds. One logarithm a landmark and point serves both.
 */
export function moveWithAreas({ source, weights, affine }: ThinPlateSpline, run: PointRun): Float64Array {
  const [constant, byX, byY] = affine;
  const count = run.x.length;
  const { x, y } = run;
  const from = { x: x.slice(), y: y.slice() };
  const room = distancesRoom(count);
  const { squared, logs } = room;
  const slopeXX = new Float64Array(count).fill(byX[0]);
  const slopeXY = new Float64Array(count).fill(byY[0]);
  const slopeYX = new Float64Array(count).fill(byX[1]);
  const slopeYY = new Float64Array(count).fill(byY[1]);
  for (let point = 0; point < count; point++) {
    x[point] = constant[0] + byX[0] * from.x[point]! + byY[0] * from.y[point]!;
    y[point] = constant[1] + byX[1] * from.x[point]! + byY[1] * from.y[point]!;
  }
  source.forEach(([landmarkX, landmarkY], landmark) => {
    const [weightX, weightY] = weights[landmark]!;
    fillDistances(from, [landmarkX, landmarkY], room);
    for (let point = 0; point < count; point++) {
      const bend = squared[point]! * logs[point]!;
      const slope = 2 * (logs[point]! + 1);
      const alongX = slope * (from.x[point]! - landmarkX);
      const alongY = slope * (from.y[point]! - landmarkY);
      x[point]! += weightX * bend;
      y[point]! += weightY * bend;
      slopeXX[point]! += weightX * alongX;
      slopeXY[point]! += weightX * alongY;
      slopeYX[point]! += weightY * alongX;
      slopeYY[point]! += weightY * alongY;
    }
  });
  return slopeXX.map((xx, point) => xx * slopeYY[point]! - slopeXY[point]! * slopeYX[point]!);
}
