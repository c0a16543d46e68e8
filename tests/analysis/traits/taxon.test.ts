import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { chiSquareUpperTail, studentQuantile } from '../../../analysis/statistics/index.ts';
import {
  checkSpread,
  errorOfPlusMinus,
  errorOnScale,
  findPooledSpread,
  findRepeatComponents,
  fromScale,
  isOnScale,
  taxonMean,
  toScale,
  type TraitScale,
} from '../../../analysis/traits/index.ts';
import { railReadings } from '../../reference/rail-readings.ts';
import rails from '../../reference/values/rails.json' with { type: 'json' };

// Gorman, Williams and Fraser 2014, PLoS ONE 9: e90081; the data are CC0, as shipped by the package vega-datasets
const penguins = JSON.parse(
  readFileSync(new URL('../../../node_modules/vega-datasets/data/penguins.json', import.meta.url), 'utf8'),
) as { Species: string; 'Beak Length (mm)': number | null }[];
const beaks = ['Adelie', 'Chinstrap', 'Gentoo'].map((species) =>
  penguins.flatMap((bird) => (bird.Species.startsWith(species) ? (bird['Beak Length (mm)'] ?? []) : [])),
);

test('beaks of three living species give the published means and variance ratio', () => {
  // means 38.79, 48.83, 47.50 mm and F = 410.6 on 2 and 339 degrees of freedom: widely printed, from memory
  const pooled = findPooledSpread(beaks)!;
  expect(pooled.df).toBe(339);
  const means = beaks.map((values) =>
    taxonMean(
      values.map((value) => ({ value })),
      pooled,
    ),
  );
  expect(means.map(({ mean }) => mean.toFixed(2))).toEqual(['38.79', '48.83', '47.50']);
  const components = findRepeatComponents(beaks)!;
  expect(components.within).toBeCloseTo(pooled.variance, 10);
  expect((components.among / components.within).toFixed(1)).toBe('410.6');
});

test('a pooled variance is the mean square within, whoever is measured once', () => {
  expect(findPooledSpread(railReadings)).toEqual({
    variance: expect.closeTo(rails.MSwithin, 10) as number,
    df: 12,
  });
  expect(findPooledSpread([...railReadings, [7]])!.df).toBe(12);
  expect(findPooledSpread([[1], [2], []])).toBeUndefined();
});

test('a taxon of one specimen borrows the pooled spread for its interval', () => {
  const mean = taxonMean([{ value: 22 }], { variance: 4, df: 30 });
  const reach = studentQuantile(0.975, 30) * 2;
  expect(mean).toMatchObject({ mean: 22, variance: 4, standardError: 2, df: 30, n: 1 });
  expect(mean.interval![1]).toBeCloseTo(22 + reach, 12);
  expect(taxonMean([{ value: 20 }, { value: 24 }], { variance: 4, df: 30 }).variance).toBe(2);
});

test('an approximate value weighs less, by its own stated error', () => {
  expect(errorOfPlusMinus(1.959963984540054)).toBeCloseTo(1, 12);
  const mean = taxonMean([{ value: 20 }, { value: 30, error: 4 }], { variance: 4, df: 9 });
  expect(mean.mean).toBeCloseTo((20 / 4 + 30 / 20) / (1 / 4 + 1 / 20), 12);
  expect(mean.variance).toBeCloseTo(1 / (1 / 4 + 1 / 20), 12);
});

test('without any spread a mean has no interval, and stated errors make a normal one', () => {
  expect(taxonMean([{ value: 3 }, { value: 5 }], undefined)).toEqual({
    mean: 4,
    variance: 0,
    standardError: 0,
    df: 0,
    n: 2,
  });
  const stated = taxonMean([{ value: 3, error: 1 }], undefined);
  expect(stated.interval![1]).toBeCloseTo(3 + 1.959963984540054, 10);
  expect(taxonMean([{ value: 3 }, { value: 5, error: 1 }], undefined).mean).toBe(4);
  expect(() => taxonMean([], undefined)).toThrow('a taxon mean needs at least one value');
});

test.each<[TraitScale, number[]]>([
  [{ kind: 'plain' }, [-3, 0, 108]],
  [{ kind: 'log' }, [0.01, 1, 108]],
  [{ kind: 'logit' }, [0.1, 50, 99.9]],
  [{ kind: 'logit', whole: 1 }, [0.001, 0.5, 0.999]],
])('going to scale %j and back changes nothing, and errors follow the slope', (scale, values) => {
  for (const value of values) {
    expect(fromScale(scale, toScale(scale, value))).toBeCloseTo(value, 12);
    const step = 1e-6 * (Math.abs(value) || 1) * (scale.kind === 'logit' ? 0.001 : 1);
    const slope = (toScale(scale, value + step) - toScale(scale, value - step)) / (2 * step);
    expect(errorOnScale(scale, value, 0.1) / (0.1 * slope)).toBeCloseTo(1, 5);
  }
});

test('values that a scale cannot hold are refused by name', () => {
  expect(isOnScale({ kind: 'logit' }, 108)).toBe(false);
  expect(() => toScale({ kind: 'logit' }, 108)).toThrow(
    'a logit scale needs values between 0 and 100, got 108',
  );
  expect(() => toScale({ kind: 'log' }, 0)).toThrow('a log scale needs values above 0, got 0');
  expect(() => toScale({ kind: 'plain' }, NaN)).toThrow(
    'a plain scale needs values that are numbers, got NaN',
  );
});

test('spread that grows with the mean is told from spread that does not', () => {
  const shape = [-1.2, -0.5, 0, 0.4, 1.3];
  const growing = [10, 20, 40, 80, 160].map((mean, k) =>
    shape.map((z) => mean * (1 + 0.05 * (1 + 0.01 * k) * z)),
  );
  const steady = [10, 20, 40, 80, 160].map((mean, k) => shape.map((z) => mean + (1 + 0.1 * (k % 2)) * z));
  expect(checkSpread(growing).slope).toBeCloseTo(1, 1);
  expect(checkSpread(growing).grows).toBeLessThan(0.01);
  expect(checkSpread(growing).unequal).toBeLessThan(0.01);
  expect(checkSpread(steady).grows).toBeGreaterThan(0.05);
  expect(checkSpread(steady).unequal).toBeGreaterThan(0.9);
  expect(checkSpread([[1, 2]])).toEqual({ unequal: NaN, slope: NaN, grows: NaN });
});

test('the test of equal spreads gives the probability of a handbook example', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.7: gear diameters in ten batches of ten, typed from
  // memory; that they give the printed statistic, 20.78580, to its last digit says that they are right
  const gear =
    '1.006 0.996 0.998 1.000 0.992 0.993 1.002 0.999 0.994 1.000 0.998 1.006 1.000 1.002 0.997 0.998 0.996 1.000 1.006 0.988 0.991 0.987 0.997 0.999 0.995 0.994 1.000 0.999 0.996 0.996 1.005 1.002 0.994 1.000 0.995 0.994 0.998 0.996 1.002 0.996 0.998 0.998 0.982 0.990 1.002 0.984 0.996 0.993 0.980 0.996 1.009 1.013 1.009 0.997 0.988 1.002 0.995 0.998 0.981 0.996 0.990 1.004 0.996 1.001 0.998 1.000 1.018 1.010 0.996 1.002 0.998 1.000 1.006 1.000 1.002 0.996 0.998 0.996 1.002 1.006 1.002 0.998 0.996 0.995 0.996 1.004 1.004 0.998 0.999 0.991 0.991 0.995 0.984 0.994 0.997 0.997 0.991 0.998 1.004 0.997'
      .split(' ')
      .map(Number);
  const batches = Array.from({ length: 10 }, (_, batch) => gear.slice(10 * batch, 10 * batch + 10));
  // the handbook's critical value at 5% on 9 degrees of freedom is 16.919
  expect(checkSpread(batches).unequal).toBeLessThan(0.05);
  expect(checkSpread(batches).unequal).toBeCloseTo(chiSquareUpperTail(20.7858, 9), 6);
});
