import beta from '@stdlib/stats-base-dists-beta';
import normal from '@stdlib/stats-base-dists-normal';
import student from '@stdlib/stats-base-dists-t';
import { expect, test } from 'vitest';
import {
  chiSquareQuantile,
  chiSquareUpperTail,
  incompleteBeta,
  inverseNormal,
  logNormalUpperTail,
  normalHazard,
  normalProbability,
  normalUpperTail,
  studentProbability,
  studentQuantile,
  studentUpperTail,
} from '../../../analysis/statistics/index.ts';

// Checks against @stdlib/stats-base-dists-*, a general-purpose library.
const places = [
  -38, -12, -8, -5, -3.3, -1.96, -0.7, -0.3, -1e-9, 0, 1e-9, 0.2, 0.707, 1, 1.7, 2.5, 4, 6, 8.2, 20,
];

function expectRelative(got: number, wanted: number, tolerance: number): void {
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(tolerance * Math.abs(wanted));
}

test.each(places)('normalProbability at %d has the digits of the library, tail included', (z) => {
  expectRelative(normalProbability(z), normal.cdf(z, 0, 1), 1e-13);
  expectRelative(normalUpperTail(z), normal.cdf(-z, 0, 1), 1e-13);
});

test('the log of the upper tail continues where the tail itself is too small for a double', () => {
  expectRelative(logNormalUpperTail(8), Math.log(normal.cdf(-8, 0, 1)), 1e-14);
  expectRelative(logNormalUpperTail(-2), Math.log(normal.cdf(2, 0, 1)), 1e-12);
  // leading terms of the asymptotic series, Abramowitz and Stegun 1964, 26.2.12
  const z = 60;
  const series = Math.log(1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6);
  expectRelative(logNormalUpperTail(z), -0.5 * z * z - Math.log(z * Math.sqrt(2 * Math.PI)) + series, 1e-12);
});

test('the mean of a standard normal value above 8 is 8.121368112236123, and above 0 is root two over pi', () => {
  // Johnson, Kotz and Balakrishnan 1994, chapter 13; the number by R 4.2.2, truncnorm 1.0-8
  expectRelative(normalHazard(8), 8.121368112236123, 1e-14);
  expectRelative(normalHazard(0), Math.sqrt(2 / Math.PI), 1e-15);
  expectRelative(normalHazard(-2), normal.pdf(-2, 0, 1) / normal.cdf(2, 0, 1), 1e-14);
});

test('inverseNormal undoes normalProbability and agrees with the library', () => {
  for (const p of [1e-8, 0.001, 0.025, 0.3, 0.5, 0.77, 0.975, 0.9999, 1 - 1e-12]) {
    expectRelative(normalProbability(inverseNormal(p)), p, 1e-12);
    expect(Math.abs(inverseNormal(p) - normal.quantile(p, 0, 1))).toBeLessThan(
      1e-10 * (1 + Math.abs(inverseNormal(p))),
    );
  }
  // beyond the library's own reach the way back is the check
  for (const p of [1e-300, 1e-20]) expectRelative(normalProbability(inverseNormal(p)), p, 1e-11);
  expect([inverseNormal(0), inverseNormal(1), inverseNormal(1.1)]).toEqual([-Infinity, Infinity, NaN]);
});

test('incompleteBeta agrees with the library and mirrors itself', () => {
  for (const [x, a, b] of [
    [0.1, 2, 3],
    [0.5, 0.5, 0.5],
    [0.99, 10, 0.5],
    [0.3, 40, 60],
    [1e-6, 1.5, 0.5],
  ] as const) {
    expectRelative(incompleteBeta(x, a, b), beta.cdf(x, a, b), 1e-12);
    expect(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a)).toBeCloseTo(1, 12);
  }
  expect([incompleteBeta(-1, 2, 2), incompleteBeta(2, 2, 2)]).toEqual([0, 1]);
});

test.each([1, 2, 3, 4, 7, 11, 24.5, 120, 999])(
  'Student quantiles with %d degrees of freedom agree with the library',
  (df) => {
    for (const p of [0.001, 0.025, 0.2, 0.5, 0.9, 0.975, 0.9995]) {
      expectRelative(studentQuantile(p, df), student.quantile(p, df), 1e-9);
      expectRelative(studentProbability(studentQuantile(p, df), df), p, 1e-11);
    }
    expectRelative(studentUpperTail(12, df), student.cdf(-12, df), 1e-10);
  },
);

test('Student quantiles at 97.5% are those of the printed tables', () => {
  // R 4.2.2 qt; the same to the digits printed in any table of Student's distribution
  expect(studentQuantile(0.975, 4)).toBeCloseTo(2.7764451051977934, 11);
  expect(studentQuantile(0.975, 7)).toBeCloseTo(2.3646242515927844, 11);
  expect(studentQuantile(0.975, 11)).toBeCloseTo(2.200985160091639, 11);
  expect(studentQuantile(0.975, 1e12)).toBeCloseTo(1.959963984540054, 12);
  expect(() => studentQuantile(0.975, 0)).toThrow('degrees of freedom must be above 0, got 0');
  expect(() => studentQuantile(1, 5)).toThrow('probability must lie inside 0 to 1, got 1');
});

test.each([
  [1, 3.841],
  [3, 7.815],
  [9, 16.919],
  [30, 43.773],
])('chi-squared with %d degrees of freedom has the handbook value %d at 95%%', (df, printed) => {
  // NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.4, critical values of the chi-squared distribution
  expect(chiSquareQuantile(0.95, df)).toBeCloseTo(printed, 3);
  expect(chiSquareUpperTail(chiSquareQuantile(0.95, df), df)).toBeCloseTo(0.05, 12);
});

test('chi-squared limits of a scatter of four dates are those of the reference', () => {
  // R 4.2.2 qchisq
  expect(chiSquareQuantile(0.025, 3) / 3).toBeCloseTo(0.07193176087463263, 12);
  expect(chiSquareQuantile(0.975, 3) / 3).toBeCloseTo(3.116134534832048, 12);
  expect([chiSquareUpperTail(0, 3), chiSquareUpperTail(-1, 3)]).toEqual([1, 1]);
  expect(() => chiSquareQuantile(1, 3)).toThrow('probability must lie inside 0 to 1, got 1');
});
