import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import {
  booksteinCoordinates,
  centroid,
  distanceBetween,
  generalSuperimposition,
  shapeDistance,
  spreadOf,
  superimpose,
  type PlanePoint,
  type SizeRule,
} from '../../analysis/geometry/index.ts';
import { squaredGap } from '../../analysis/geometry/procrustes.ts';
import { holdToAccount, type Check, type Part } from './account.ts';
import { planePoints } from './plane-points.ts';
import known from './values/gorillas.json' with { type: 'json' };

type Group = (typeof known.gorillas)['females'] | (typeof known.gorillas)['males'];

const groups = Object.entries(known.gorillas).flatMap(([name, group]) =>
  'landmarks' in group ? [{ name, group, shapes: group.landmarks.map(planePoints) }] : [],
);
const fits = new Map(
  groups.map(({ name, shapes }) => [
    name,
    (['one', 'fitted', 'kept'] as const).map((rule) => generalSuperimposition(shapes, rule)),
  ]),
);

function fitOf(name: string, rule: SizeRule) {
  return fits.get(name)![['one', 'fitted', 'kept'].indexOf(rule)]!;
}

/** Distances between all pairs of landmarks, the first one with each later one first. */
function distances(points: readonly PlanePoint[]): number[] {
  return points.flatMap((point, k) => points.slice(k + 1).map((other) => distanceBetween(point, other)));
}

/** Plain mean of laid shapes, which is a little smaller than size 1. */
function plainMean(laid: readonly (readonly PlanePoint[])[]): PlanePoint[] {
  return laid[0]!.map((_, landmark) => centroid(laid.map((shape) => shape[landmark]!)));
}

/** Sum of squares of laid shapes about their plain mean. */
function sumSquares(laid: readonly (readonly PlanePoint[])[]): number {
  const mean = plainMean(laid);
  return laid.reduce((sum, shape) => sum + squaredGap(shape, mean), 0);
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

/** A shape turned onto one that the file gives in a frame of its own. */
function onto(found: readonly PlanePoint[], given: readonly (readonly number[])[]): Part {
  return superimpose(found, planePoints(given), { scaling: false, reflection: 'refuse' }).points;
}

/** Variances of laid shapes along their principal axes, largest first. */
function principalVariances(laid: readonly (readonly PlanePoint[])[]): number[] {
  const rows = new Matrix(laid.map((shape) => shape.flat()));
  const centredRows = rows.center('column');
  const covariance = centredRows
    .transpose()
    .mmul(centredRows)
    .div(laid.length - 1);
  const { realEigenvalues } = new EigenvalueDecomposition(covariance, { assumeSymmetric: true });
  return realEigenvalues.sort((a, b) => b - a);
}

function shares(variances: readonly number[]): number[] {
  const all = variances.reduce((sum, variance) => sum + variance, 0);
  return variances.map((variance) => (100 * variance) / all);
}

interface NamedGroup {
  readonly name: string;
  readonly group: Group;
  readonly shapes: readonly (readonly PlanePoint[])[];
}

function exact({ name, group, shapes }: NamedGroup): Part {
  const [partial, full] = [fitOf(name, 'one'), fitOf(name, 'fitted')];
  const sizes = shapes.map(spreadOf);
  const angles = (mean: readonly PlanePoint[]) => shapes.map((shape) => shapeDistance(shape, mean).angleRad);
  return {
    n: shapes.length,
    k: shapes[0]!.length,
    centroidSizes: sizes,
    meanCentroidSize: sizes.reduce((sum, size) => sum + size, 0) / sizes.length,
    partialFit: {
      meanShapeUnit: onto(partial.mean, group.partialFit.meanShapeUnit),
      sumSquares: sumSquares(partial.shapes),
      rho: angles(partial.mean),
      meanPairwiseMeanShapeDistances: distances(partial.mean),
    },
    fullFit: {
      sumSquares: sumSquares(full.shapes),
      meanShapeUnit_interlandmarkDistances: distances(full.mean),
      rho: angles(full.mean),
    },
    packageFullFit: { size: sizes },
  };
}

/** The package rests when its mean moves by little, so that its own answers have nine digits. */
function asThePackage({ name, group, shapes }: NamedGroup): Part {
  const full = fitOf(name, 'fitted');
  const found = shapes.map((shape) => shapeDistance(shape, full.mean));
  // the package keeps the sum of the squares of all sizes
  const size = rootMeanSquare(full.centroidSizes) / rootMeanSquare(full.shapes.map(spreadOf));
  const variances = principalVariances(full.shapes);
  return {
    rhoToMean: found.map(({ angleRad }) => angleRad),
    rootMeanSquareRho: rootMeanSquare(found.map(({ angleRad }) => angleRad)),
    rootMeanSquareDistance: rootMeanSquare(found.map((distance) => distance.full)),
    packageFullFit: {
      meanShape: onto(
        plainMean(full.shapes).map(([x, y]): PlanePoint => [x * size, y * size]),
        group.packageFullFit.meanShape,
      ),
      meanShapeUnit_interlandmarkDistances: distances(full.mean),
      percentVar: shares(variances),
      componentDeviations: variances.map((variance) => Math.sqrt(Math.max(0, variance)) * size),
    },
  };
}

function sizesKept({ name, shapes }: NamedGroup): Part {
  const kept = fitOf(name, 'kept');
  return {
    packageSizesKept: {
      rootMeanSquareDistance: rootMeanSquare(shapes.map((shape) => shapeDistance(shape, kept.mean).full)),
      meanInterlandmarkDistances: distances(kept.mean),
      percentVar: shares(principalVariances(kept.shapes)),
    },
  };
}

function pairAnswer({ a, b }: (typeof known.pair)[number]): Part {
  const females = groups[0]!.shapes;
  const [one, other] = [females[a - 1]!, females[b - 1]!];
  const { angleRad, partial, full } = shapeDistance(one, other);
  const laid = superimpose(other, one);
  const [cosine, sine] = [Math.cos(laid.turnRad), Math.sin(laid.turnRad)];
  return {
    rho: angleRad,
    dF: full,
    dP: partial,
    ordinarySumSquares: laid.squares,
    scale: laid.scale,
    rootMeanSquare: Math.sqrt(laid.squares / one.length),
    // the package turns rows from the right
    rotation: [
      [cosine, sine],
      [-sine, cosine],
    ],
  };
}

const shifted = (points: readonly PlanePoint[]) => points.map(([x, y]): PlanePoint => [x - 0.5, y]);

function booksteinAnswer(): Part {
  const [start, end] = known.booksteinFemales.baseline as [number, number];
  const all = groups[0]!.shapes.map((shape) => shifted(booksteinCoordinates(shape, [start - 1, end - 1])));
  return {
    specimen1: all[0]!,
    meanShape: all[0]!.map((_, landmark) => centroid(all.map((shape) => shape[landmark]!))),
  };
}

const checks = groups.flatMap((each): Check[] => [
  {
    claim: `${each.name}: sizes, means and angles`,
    at: `gorillas/${each.name}`,
    within: 1e-11,
    size: 1,
    answer: () => exact(each),
  },
  {
    claim: `${each.name}: as a package for shapes has them`,
    at: `gorillas/${each.name}`,
    within: 1e-8,
    size: 10,
    answer: () => asThePackage(each),
  },
  {
    claim: `${each.name}: sizes kept`,
    at: `gorillas/${each.name}`,
    within: 1e-5,
    size: 1,
    answer: () => sizesKept(each),
  },
]);

holdToAccount({
  name: 'gorillas',
  values: known,
  given: ['gorillas/*/landmarks', 'pair/*/a', 'pair/*/b', 'booksteinFemales/baseline'],
  described: {
    'gorillas/*/partialFit/iterations':
      'how often the reference went round; ours goes on until the mean rests',
    meansCompared:
      'tests of two means of shape, which the engine has no use for: its shapes are of relatives on a tree',
    'booksteinFemales/note': 'where the frame has its origin',
  },
  checks: [
    ...checks,
    {
      claim: 'females and males: the angle between their means',
      at: 'gorillas/maleFemaleMeans',
      within: 1e-8,
      answer: () => ({
        rho: shapeDistance(fitOf('females', 'fitted').mean, fitOf('males', 'fitted').mean).angleRad,
      }),
    },
    {
      claim: 'two females laid on each other',
      at: 'pair',
      within: 1e-10,
      answer: () => known.pair.map(pairAnswer),
    },
    {
      claim: 'Bookstein coordinates',
      at: 'booksteinFemales',
      within: 1e-12,
      size: 1,
      answer: booksteinAnswer,
    },
  ],
});
