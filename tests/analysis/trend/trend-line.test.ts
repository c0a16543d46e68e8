import { Matrix, inverse } from 'ml-matrix';
import { expect, test } from 'vitest';
import { findBestSlope, slopeOnTree, type Observation } from '../../../analysis/estimate/index.ts';
import { studentQuantile } from '../../../analysis/statistics/index.ts';
import { trendSigns } from '../../../analysis/trend/index.ts';
import { dateAsGiven, dateTree, parseNewick } from '../../../analysis/tree/index.ts';
import { sharedPaths, tipNodes } from '../../reference/dense-brownian.ts';
import nineTips from '../../reference/values/nine-tips.json' with { type: 'json' };
import trend from '../../reference/values/nine-tips-trend.json' with { type: 'json' };

const tree = dateAsGiven(parseNewick(nineTips.newick), nineTips.rootAge);
const observations = Object.entries(nineTips.y)
  .filter(([taxon]) => taxon !== 'G')
  .map(([taxon, mean]): Observation => ({ taxon, mean, variance: 0 }));

/** Variance of a fitted line at some times over the rate, by dense algebra (general-purpose library ml-matrix). */
function denseLine(times: readonly number[]) {
  const tips = tipNodes(tree);
  const nodes = observations.map(({ taxon }) => tips.get(taxon)!);
  const precision = inverse(new Matrix(sharedPaths(tree, nodes)));
  const rootMa = tree.ageMa.at(-1)!;
  const design = new Matrix(nodes.map((node) => [1, rootMa - tree.ageMa[node]!]));
  const covariance = inverse(design.transpose().mmul(precision).mmul(design));
  const values = Matrix.columnVector(observations.map(({ mean }) => mean));
  const best = covariance.mmul(design.transpose()).mmul(precision).mmul(values);
  return times.map((time) => {
    const row = new Matrix([[1, time]]);
    return {
      median: row.mmul(best).get(0, 0),
      variance: row.mmul(covariance).mmul(row.transpose()).get(0, 0),
    };
  });
}

test('the fitted line starts at the root value of the reference and has its slope', () => {
  const [reference] = trend.cases;
  const slope = slopeOnTree({ tree, observations, predictor: 'time', lineAt: [0, 10] });
  if (typeof slope === 'string') throw new Error(slope);
  expect(slope.line[0]!.median).toBeCloseTo(reference!.rootMean, 9);
  expect(slope.line[1]!.median).toBeCloseTo(reference!.rootMean + 10 * reference!.trendPerMyr, 9);
});

test('the interval of the line is that of dense generalised least squares with t on taxa less two', () => {
  const [reference] = trend.cases;
  const times = [0, 12, 31, 45];
  const slope = slopeOnTree({ tree, observations, predictor: 'time', lineAt: times });
  if (typeof slope === 'string') throw new Error(slope);
  denseLine(times).forEach(({ median, variance }, index) => {
    const half = studentQuantile(0.975, 6) * Math.sqrt(reference!.sigma2_REML * variance);
    expect(slope.line[index]!.median).toBeCloseTo(median, 9);
    expect(slope.line[index]!.interval[0]).toBeCloseTo(median - half, 7);
    expect(slope.line[index]!.interval[1]).toBeCloseTo(median + half, 7);
  });
});

test('the quick slope is the slope of the reference, with and without sampling variance', () => {
  const [exact, inexact] = trend.cases;
  expect(findBestSlope(tree, observations)).toBeCloseTo(exact!.trendPerMyr, 9);
  const errors = new Map(Object.entries(nineTips.se));
  const withError = observations.map((each) => ({ ...each, variance: errors.get(each.taxon)! ** 2 }));
  expect(findBestSlope(tree, withError)).toBeCloseTo(inexact!.trendPerMyr, 6);
  expect(findBestSlope(tree, observations.slice(0, 3))).toBeUndefined();
});

test('signs are counted over the datings that can be made', () => {
  const topology = parseNewick('((a,b),((c,d),e));');
  const means = { a: 1, b: 1.2, c: 2, d: 3, e: 2.5 };
  const signs = trendSigns({
    hypothesis: { id: 'small', tree: topology, dating: { rule: 'equal-share', rootAgeMa: 30 } },
    observations: Object.entries(means).map(([taxon, mean]) => ({ taxon, mean, variance: 0.01 })),
    // the last set has a tip older than the root
    tipAgesOfDraw: (draw) =>
      new Map(Object.entries({ a: 20, b: 18, c: 10, d: draw === 3 ? 40 : draw, e: 6 })),
    draws: 4,
  });
  expect(signs).toMatchObject({ datings: 3, rising: 3, falling: 0 });
  expect(signs.range[0]).toBeLessThan(signs.range[1]);
  expect(() => dateTree(topology, { rule: 'equal-share', rootAgeMa: 30 }, new Map([['a', 40]]))).toThrow();
});

test('four taxa leave two degrees of freedom, and the interval is that of t with two', () => {
  const topology = parseNewick('((a,b),(c,d));');
  const dated = dateTree(
    topology,
    { rule: 'equal-share', rootAgeMa: 40 },
    new Map(Object.entries({ a: 33, b: 33, c: 15, d: 0 })),
  );
  const means = { a: 33.8, b: 31.4, c: 43.1, d: 49.3 };
  const four = Object.entries(means).map(([taxon, mean]) => ({ taxon, mean, variance: 0 }));
  const exact = slopeOnTree({ tree: dated, observations: four, predictor: 'time' });
  const inexact = slopeOnTree({
    tree: dated,
    observations: four.map((each) => ({ ...each, variance: 0.3 })),
    predictor: 'time',
  });
  if (typeof exact === 'string' || typeof inexact === 'string') throw new Error('no slope');
  const half = (exact.interval[1] - exact.interval[0]) / 2;
  const wider = slopeOnTree({ tree: dated, observations: four, predictor: 'time', level: 0.99 });
  if (typeof wider === 'string') throw new Error(wider);
  expect((wider.interval[1] - wider.interval[0]) / 2 / half).toBeCloseTo(
    studentQuantile(0.995, 2) / studentQuantile(0.975, 2),
    5,
  );
  expect([inexact.median, ...inexact.interval, inexact.pValue].every(Number.isFinite)).toBe(true);
});
