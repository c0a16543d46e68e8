import { findFactors, solveFactored, type Factors } from './linear-system.ts';
import { distanceBetween, type PlanePoint } from './plane.ts';
import { isOnOneLine, samePlaceShare, spreadOf } from './spread.ts';

/** A smooth map of the plane that carries each landmark of one shape onto the same landmark of another. */
export interface ThinPlateSpline {
  readonly source: readonly PlanePoint[];
  /** One pair a landmark: how much it bends x and y. */
  readonly weights: readonly PlanePoint[];
  /** Constant, factor of x and factor of y, each for the new x and the new y. */
  readonly affine: readonly [PlanePoint, PlanePoint, PlanePoint];
}

/** Two landmarks of a spline, by their place in the list, that lie in one place. */
export class LandmarksCoincide extends Error {
  readonly pair: readonly [number, number];
  constructor(first: number, second: number) {
    super(`landmarks ${first} and ${second} of a spline are in one place`);
    this.pair = [first, second];
  }
}

/**
 * Thin-plate spline from one set of landmarks to another: U(r) = r² ln r² with U(0) = 0, as in Bookstein (1989),
 * IEEE Transactions on Pattern Analysis and Machine Intelligence 11: 567–585. Cost grows with the cube of the number
 * of landmarks. Throws for fewer than three, for two in one place and for all on one line.
 */
export function fitSpline(source: readonly PlanePoint[], target: readonly PlanePoint[]): ThinPlateSpline {
  if (source.length !== target.length)
    throw new Error(`a spline needs as many targets as landmarks, got ${target.length} for ${source.length}`);
  const factors = systems.get(source) ?? requireSystem(source);
  systems.set(source, factors);
  const [x, y] = ([0, 1] as const).map((axis) =>
    solveFactored(factors, [...target.map((point) => point[axis]), 0, 0, 0]),
  ) as [Float64Array, Float64Array];
  const pair = (index: number): PlanePoint => [x[index]!, y[index]!];
  const count = source.length;
  return {
    source,
    weights: source.map((_, index) => pair(index)),
    affine: [pair(count), pair(count + 1), pair(count + 2)],
  };
}

/** Systems by their list of landmarks: a hundred animals are drawn from one template, and factors cost most of a fit. */
const systems = new WeakMap<readonly PlanePoint[], Factors>();

/** Factors of the bordered matrix of landmark kernels. */
function requireSystem(source: readonly PlanePoint[]): Factors {
  if (source.length < 3) throw new Error(`a spline requires at least three landmarks, got ${source.length}`);
  if (isOnOneLine(source)) throw new Error('a spline requires landmarks that are not all on one line');
  requireApart(source);
  const size = source.length + 3;
  const matrix = new Float64Array(size * size);
  const set = (row: number, column: number, value: number) => {
    matrix[row * size + column] = value;
    matrix[column * size + row] = value;
  };
  source.forEach((point, row) => {
    for (let column = 0; column < row; column++)
      set(row, column, kernel(squaredDistance(point, source[column]!)));
    [1, point[0], point[1]].forEach((value, column) => set(row, source.length + column, value));
  });
  const factors = findFactors(matrix, size);
  if (!factors) throw new Error('the landmarks of a spline do not determine it');
  return factors;
}

function requireApart(source: readonly PlanePoint[]): void {
  const least = spreadOf(source) * samePlaceShare;
  source.forEach((point, index) => {
    const twin = source.findIndex((other, place) => place < index && distanceBetween(point, other) <= least);
    if (twin >= 0) throw new LandmarksCoincide(twin, index);
  });
}

function squaredDistance(from: PlanePoint, to: PlanePoint): number {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  return dx * dx + dy * dy;
}

function kernel(squared: number): number {
  return squared === 0 ? 0 : squared * Math.log(squared);
}

/** Where a spline puts a point. */
export function applySpline(spline: ThinPlateSpline, point: PlanePoint): PlanePoint {
  const [constant, byX, byY] = spline.affine;
  let x = constant[0] + byX[0] * point[0] + byY[0] * point[1];
  let y = constant[1] + byX[1] * point[0] + byY[1] * point[1];
  // Plain loops here and below: they run a million times for one page.
  for (let index = 0; index < spline.source.length; index++) {
    const bend = kernel(squaredDistance(spline.source[index]!, point));
    const weight = spline.weights[index]!;
    x += weight[0] * bend;
    y += weight[1] * bend;
  }
  return [x, y];
}

/** Derivatives of a spline at a point: [dx/dx, dx/dy, dy/dx, dy/dy]. */
export function splineDerivatives(
  spline: ThinPlateSpline,
  point: PlanePoint,
): readonly [number, number, number, number] {
  const [, byX, byY] = spline.affine;
  let xx = byX[0];
  let xy = byY[0];
  let yx = byX[1];
  let yy = byY[1];
  for (let index = 0; index < spline.source.length; index++) {
    const place = spline.source[index]!;
    const squared = squaredDistance(place, point);
    if (squared === 0) continue;
    const slope = 2 * (Math.log(squared) + 1);
    const dx = slope * (point[0] - place[0]);
    const dy = slope * (point[1] - place[1]);
    const weight = spline.weights[index]!;
    xx += weight[0] * dx;
    xy += weight[0] * dy;
    yx += weight[1] * dx;
    yy += weight[1] * dy;
  }
  return [xx, xy, yx, yy];
}

/**
 * Bending energy of a spline, x and y apart: Σᵢⱼ wᵢ wⱼ U(rᵢⱼ). Bookstein's integral is this times a constant (16π under
 * this U), left out as in his tables; their two values are given here apart, where some programs print the mean or the
 * sum. Zero for an affine map.
 */
export function bendingEnergy({ source, weights }: ThinPlateSpline): PlanePoint {
  const sum = ([0, 1] as const).map((axis) =>
    source.reduce(
      (total, from, row) =>
        total +
        source.reduce(
          (part, to, column) =>
            part + weights[row]![axis] * weights[column]![axis] * kernel(squaredDistance(from, to)),
          0,
        ),
      0,
    ),
  );
  return [sum[0]!, sum[1]!];
}

/** Bending energy matrix of a set of landmarks, row by row: the upper left block of the inverse of the system. */
export function bendingEnergyMatrix(source: readonly PlanePoint[]): number[][] {
  const factors = requireSystem(source);
  const columns = source.map((_, column) =>
    solveFactored(
      factors,
      Float64Array.from({ length: factors.size }, (__, row) => (row === column ? 1 : 0)),
    ),
  );
  return source.map((_, row) => columns.map((column) => column[row]!));
}
