import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import {
  applySpline,
  bendingEnergy,
  bendingEnergyMatrix,
  booksteinCoordinates,
  centroid,
  fitSpline,
  preShape,
  shapeDistance,
  spreadOf,
  superimpose,
  type PlanePoint,
} from '../../analysis/geometry/index.ts';
import { holdToAccount, type Check, type Part } from './account.ts';
import { planePoints } from './plane-points.ts';
import splines from './values/splines.json' with { type: 'json' };

const triangles = splines.triangles;
const [first, second] = [planePoints(triangles.T1), planePoints(triangles.T2)];

function trianglesAnswer(): Part {
  const { angleRad, partial, full } = shapeDistance(first, second);
  const [unit1, unit2] = [preShape(first), preShape(second)];
  const laid = superimpose(unit2, unit1, { scaling: false, reflection: 'refuse' });
  return {
    centroid1: centroid(first),
    centroid2: centroid(second),
    CS1: spreadOf(first),
    CS2: spreadOf(second),
    unit1,
    unit2,
    rho: angleRad,
    partialProcrustes: partial,
    fullProcrustes: full,
    rotated2: laid.points,
    angleDeg: (laid.turnRad * 180) / Math.PI,
    bookstein1: booksteinCoordinates(first, [0, 1]),
    bookstein2: booksteinCoordinates(second, [0, 1]),
  };
}

/** What one landmark of a spline adds at each other one, a weight of one: the kernel of the spline. */
function kernelMatrix(source: readonly PlanePoint[]): number[][] {
  const affine = [
    [0, 0],
    [0, 0],
    [0, 0],
  ] as const;
  return source.map((_, one) => {
    const weights = source.map((_point, k): PlanePoint => [Number(k === one), 0]);
    return source.map((point) => applySpline({ source, weights, affine }, point)[0]);
  });
}

interface SplineRow {
  readonly X: readonly (readonly number[])[];
  readonly Y: readonly (readonly number[])[];
  readonly warped: readonly { readonly at: readonly number[] }[];
}

function splineAnswer({ X, Y, warped }: SplineRow): Part {
  const source = planePoints(X);
  const spline = fitSpline(source, planePoints(Y));
  const [x, y] = bendingEnergy(spline);
  return {
    K: kernelMatrix(source),
    w: spline.weights,
    affine: spline.affine,
    wKw_xy: [x, y],
    bendingEnergy_x: x,
    bendingEnergy_y: y,
    bendingEnergyTotal: x + y,
    warped: planePoints(warped.map(({ at }) => at)).map((at) => ({ to: applySpline(spline, at) })),
  };
}

/** The matrix whose quadratic form is the energy, and its eigenvalues, largest first. */
function matrixAnswer({ X }: SplineRow): Part {
  const matrix = bendingEnergyMatrix(planePoints(X)).map((row) => [...row]);
  const { realEigenvalues } = new EigenvalueDecomposition(new Matrix(matrix), { assumeSymmetric: true });
  return { bendingEnergyMatrix: matrix, eigenvaluesLk: realEigenvalues.sort((a, b) => b - a) };
}

/** Eigenvalues of 0 and coefficients of 0 are rounding in the reference: the sizes below are those of the rest. */
const rows = Object.entries(splines.tps).flatMap(([name, row]): Check[] => [
  {
    claim: `${name}: kernel, weights, affine part, energy and points moved`,
    at: `tps/${name}`,
    within: 1e-11,
    size: name === 'gorillaFtoM' ? 1e-2 : 1,
    answer: () => splineAnswer(row),
  },
  {
    claim: `${name}: the bending energy matrix and its eigenvalues`,
    at: `tps/${name}`,
    within: 1e-11,
    size: name === 'gorillaFtoM' ? 1e-4 : 1,
    answer: () => matrixAnswer(row),
  },
]);

holdToAccount({
  name: 'splines',
  values: splines,
  given: ['triangles/T1', 'triangles/T2', 'tps/*/X', 'tps/*/Y', 'tps/*/warped/*/at'],
  checks: [
    {
      claim: 'two triangles: centroids, sizes, shapes, distances and the turn between them',
      at: 'triangles',
      within: 1e-13,
      size: 0.1,
      answer: trianglesAnswer,
    },
    ...rows,
  ],
});
