import { expect, test } from 'vitest';
import { congruenceOf, darwins, haldanes, testCongruence } from '../../../analysis/trend/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { parseNewick } from '../../../analysis/tree/index.ts';

// invented samples; formulas of Haldane 1949 and Gingerich 1993, numbers by R 4.2.2
const earlier = { mean: 52.3, logDeviation: 0.05, n: 12 };
const later = { mean: 61.8, logDeviation: 0.06, n: 15 };

test('a doubling in a million years is ln 2 darwins', () => {
  expect(darwins({ ...earlier, mean: 10 }, { ...later, mean: 20 }, 1).rate).toBeCloseTo(Math.LN2, 14);
});

test('rates refuse lengths and intervals of 0 or less', () => {
  expect(() => darwins(earlier, later, 0)).toThrow('interval must be above 0, got 0');
  expect(() => darwins({ ...earlier, mean: -1 }, later, 1)).toThrow('length must be above 0, got -1');
  expect(() => haldanes({ ...earlier, logDeviation: 0 }, { ...later, logDeviation: 0 }, 10)).toThrow(
    'pooled deviation must be above 0, got 0',
  );
});

// invented finds; indices by their published formulas, permutations by all 720 orders in R 4.2.2
const tree = parseNewick('(A,((B,C),(D,(E,F))));');
const ranges = new Map(
  Object.entries({
    A: [230, 225],
    B: [215, 200],
    C: [222, 210],
    D: [190, 165],
    E: [201, 195],
    F: [170, 150],
  }).map(([label, [firstMa, lastMa]]) => [label, { firstMa: firstMa!, lastMa: lastMa! }]),
);

test('dealing finds out anew has the share and the mean of all 720 orders', () => {
  const dealt = testCongruence(tree, ranges, 4000, seededRandom('deals'));
  // one order in 720 · (1 − 0.98333) = 12 has a gap as small or smaller
  expect(Math.abs(dealt.pValue - 12 / 720)).toBeLessThan(4 * Math.sqrt(12 / 720 / 4000));
  expect(dealt.meanGapMyr).toBeCloseTo(121.23333333333333, 0);
});

test('taxa without finds and finds the wrong way round are named, and finds of one age have no index', () => {
  expect(() => congruenceOf(tree, new Map([['A', { firstMa: 3, lastMa: 2 }]]))).toThrow(
    'no finds for the tips "B", "C"',
  );
  const wrong = new Map([...ranges, ['A', { firstMa: 2, lastMa: 3 }]]);
  expect(() => congruenceOf(tree, wrong)).toThrow(
    'first find of "A" must not be younger than its last, got 2 and 3',
  );
  const level = congruenceOf(
    tree,
    new Map([...ranges.keys()].map((label) => [label, { firstMa: 9, lastMa: 9 }])),
  );
  expect(level).toMatchObject({ gapMyr: 0, consistency: 1, gapExcessRatio: NaN, gapRatio: NaN });
});
