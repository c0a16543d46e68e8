import { expect, test } from 'vitest';
import { slopeOnTree } from '../../../analysis/estimate/index.ts';
import { kendallOnTree, sideOf, trendsOn, verdictOf } from '../../../analysis/trend/index.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { studentQuantile, studentUpperTail } from '../../../analysis/statistics/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import nineTips from '../../reference/values/nine-tips.json' with { type: 'json' };
import trend from '../../reference/values/nine-tips-trend.json' with { type: 'json' };
import primates from '../../reference/values/primates.json' with { type: 'json' };
import { simulateData } from '../../reference/simulate-brownian.ts';

const fiveTree = dateAsGiven(parseNewick(primates.newick));
const exact = (values: Record<string, number>) =>
  Object.entries(values).map(([taxon, mean]) => ({ taxon, mean, variance: 0 }));

test('longevity on mass has a t test on three degrees of freedom', () => {
  const slope = slopeOnTree({
    tree: fiveTree,
    observations: exact(primates.Y),
    predictor: new Map(Object.entries(primates.X)),
  });
  if (typeof slope === 'string') throw new Error(slope);
  expect(slope.degreesOfFreedom).toBe(3);
  // correlation r of contrasts through the origin: t = r √(df / (1 − r²))
  const r = primates.corr;
  expect(slope.pValue).toBeCloseTo(2 * studentUpperTail(r * Math.sqrt(3 / (1 - r * r)), 3), 7);
});

const nineTree = dateAsGiven(parseNewick(nineTips.newick), nineTips.rootAge);
const nine = exact(nineTips.y);

test('a trend through time has the slope, error and t test of the reference', () => {
  const { trendPerMyr: known, coefCov_atREML } = trend.cases[0]!;
  const error = Math.sqrt(coefCov_atREML[1]![1]!);
  const slope = slopeOnTree({
    tree: nineTree,
    observations: nine.filter(({ taxon }) => taxon !== 'G'),
    predictor: 'time',
  });
  if (typeof slope === 'string') throw new Error(slope);
  expect(slope.median).toBeCloseTo(known, 9);
  expect(slope.interval[0]).toBeCloseTo(known - studentQuantile(0.975, 6) * error, 8);
  expect(slope.pValue).toBeCloseTo(2 * studentUpperTail(known / error, 6), 8);
});

test('a trend is told only where the reference passes and every tree has its sign', () => {
  const rival = dateAsGiven(
    parseNewick('(J:12,((D:28,F:17):2,((A:45,(B:15,C:3):30):10,(G:30,(E:20,H:25):27):8):7):2);'),
  );
  const other = dateAsGiven(parseNewick('((A:1,B:1):1,(C:1,D:1):1);'));
  const trends = trendsOn(
    [
      { id: 'main', tree: nineTree },
      { id: 'rival', tree: rival },
    ],
    nine,
  );
  expect(verdictOf(trends)).toBe('rises');
  expect(verdictOf([...trends].map((trend) => ({ ...trend, slope: flip(trend.slope) })))).toBe('falls');
  expect(verdictOf([trends[0]!, { id: 'x', slope: flip(trends[1]!.slope) }])).toBe('cannot-tell');
  expect(verdictOf(trendsOn([{ id: 'level', tree: other }], nine))).toBe('cannot-tell');
  expect(verdictOf([])).toBe('cannot-tell');
});

function flip(slope: ReturnType<typeof slopeOnTree>): ReturnType<typeof slopeOnTree> {
  if (typeof slope === 'string') return slope;
  const [low, high] = slope.interval;
  return { ...slope, median: -slope.median, interval: [-high, -low] };
}

test('slopes lie on one side of a value where the reference leaves it out and no other crosses it', () => {
  const slope = (median: number, reach: number) => ({
    median,
    interval: [median - reach, median + reach] as const,
    pValue: 0.5,
    degreesOfFreedom: 7,
    standardDeviation: 1,
    line: [],
  });
  expect(sideOf([slope(1.3, 0.2), slope(1.1, 0.9)], 1)).toBe('above');
  expect(sideOf([slope(0.7, 0.2), slope(0.9, 0.9)], 1)).toBe('below');
  expect(sideOf([slope(1.3, 0.4), slope(1.3, 0.1)], 1)).toBe('cannot-tell');
  expect(sideOf([slope(1.3, 0.2), slope(0.95, 0.9)], 1)).toBe('cannot-tell');
  expect(sideOf([slope(1.3, 0.2), 'no-scatter'], 1)).toBe('cannot-tell');
  expect(sideOf(['no-tree', slope(1.3, 0.2)], 1)).toBe('cannot-tell');
  expect(sideOf([], 1)).toBe('cannot-tell');
});

test('few taxa, equal values, a level tree and taxa at one point have no slope', () => {
  expect(slopeOnTree({ tree: nineTree, observations: nine.slice(0, 3), predictor: 'time' })).toBe(
    'fewer-than-four',
  );
  const level = dateAsGiven(parseNewick('((A:1,B:1):1,(C:1,D:1):1);'));
  expect(slopeOnTree({ tree: level, observations: nine.slice(0, 4), predictor: 'time' })).toBe(
    'predictor-does-not-vary',
  );
  const equal = nine.map((one) => ({ ...one, mean: 2 }));
  expect(slopeOnTree({ tree: nineTree, observations: equal, predictor: 'time' })).toBe('no-scatter');
  const doubled = dateAsGiven(parseNewick('((A:0,B:0):2,(C:1,D:2):1);'));
  const inexact = nine.slice(0, 4).map((one) => ({ ...one, variance: 0.1 }));
  const size = new Map(inexact.map(({ taxon }, index) => [taxon, index]));
  expect(slopeOnTree({ tree: doubled, observations: inexact, predictor: size })).toBe('taxa-at-one-point');
  const exactly = nine.slice(0, 4);
  expect(slopeOnTree({ tree: doubled, observations: exactly, predictor: 'time' })).toBe('taxa-at-one-point');
});

test('where nothing trends the tree test finds a trend in fewer than six of a hundred data sets', () => {
  let found = 0;
  const sets = 1000;
  for (let set = 0; set < sets; set++) {
    const random = seededRandom('no trend', set);
    const { tree, observations } = simulateData(11, 0.2, random, normalDraw);
    const slope = slopeOnTree({ tree, observations, predictor: 'time' });
    found += Number(typeof slope !== 'string' && slope.pValue < 0.05);
  }
  // 5% allows 7.3% by chance once in a thousand times; the aim is 6%
  expect(found / sets).toBeLessThan(0.06);
});

test("Kendall's tau across relatives is judged by simulation on the tree, the same for the same seed", () => {
  const question = { tree: nineTree, observations: nine, rate: 0.003, draws: 999, seed: 1 };
  const test = kendallOnTree(question);
  expect(test).toEqual(kendallOnTree(question));
  expect(test.tau).toBeGreaterThan(0.7);
  expect(test.pValue).toBeGreaterThan(0);
  expect(test.pValue).toBeLessThan(0.05);
});
