import { expect, test } from 'vitest';
import { kendallTest, meanRanks, spearmanTest } from '../../../analysis/trend/index.ts';
import { discordanceShares, tieCounts, tiedVariance } from '../../../analysis/trend/kendall.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { rankReference as known } from '../../reference/rank-tests.ts';

test('the published example has its printed statistics and probabilities', () => {
  const { x, y, ...printed } = known.published;
  const kendall = kendallTest(x, y);
  expect(kendall).toMatchObject({ statistic: printed.s, method: 'exact' });
  expect(kendall.coefficient).toBeCloseTo(printed.tau, 12);
  expect(kendall.pTwoSided).toBeCloseTo(printed.kendallTwoSided, 12);
  expect(kendall.pGreater).toBeCloseTo(printed.kendallGreater, 12);
  const spearman = spearmanTest(x, y);
  expect(spearman).toMatchObject({ statistic: printed.squares, method: 'exact' });
  expect(spearman.coefficient).toBeCloseTo(printed.rho, 12);
  expect(spearman.pTwoSided).toBeCloseTo(printed.spearmanTwoSided, 12);
  expect(spearman.pGreater).toBeCloseTo(printed.spearmanGreater, 12);
});

test('seven finds through time have the probabilities of all orders', () => {
  const time = known.seven.agesMa.map((age) => -age);
  expect(kendallTest(time, known.seven.y)).toMatchObject({ statistic: known.seven.s });
  expect(kendallTest(time, known.seven.y).pTwoSided).toBeCloseTo(known.seven.kendallTwoSided, 12);
  expect(spearmanTest(time, known.seven.y).coefficient).toBeCloseTo(known.seven.rho, 12);
  expect(spearmanTest(time, known.seven.y).pTwoSided).toBeCloseTo(known.seven.spearmanTwoSided, 12);
});

test('with ties the exact probability is that of all orders, far from the normal one', () => {
  const { x, y, ...printed } = known.ties;
  const kendall = kendallTest(x, y);
  expect(kendall).toMatchObject({ statistic: printed.s, method: 'exact' });
  expect(kendall.coefficient).toBeCloseTo(printed.tau, 12);
  expect(kendall.pTwoSided).toBeCloseTo(printed.kendallTwoSided, 12);
  expect(kendall.pGreater).toBeCloseTo(printed.kendallGreater, 12);
  expect(spearmanTest(x, y).coefficient).toBeCloseTo(printed.rho, 12);
  expect(spearmanTest(x, y).pTwoSided).toBeCloseTo(printed.spearmanTwoSided, 12);
  expect(tiedVariance(8, tieCounts(x), tieCounts(y))).toBeCloseTo(printed.tiedVariance, 10);
});

test.each(known.kendallNull)(
  "the null distribution of Kendall's statistic for $n values is that of the tables",
  ({ n, tails }) => {
    const shares = discordanceShares(n);
    const pairs = (n * (n - 1)) / 2;
    for (const [statistic, upper] of tails) {
      const discordant = (pairs - statistic) / 2;
      expect(shares.slice(0, discordant + 1).reduce((sum, share) => sum + share, 0)).toBeCloseTo(upper, 12);
    }
  },
);

test.each(known.spearmanNull)(
  "the null distribution of Spearman's statistic for $n values is that of all orders",
  ({ n, squares, shareUpTo }) => {
    const x = Array.from({ length: n }, (_, k) => k);
    const random = seededRandom('orders', n);
    for (let draw = 0; draw < 20; draw++) {
      const y = x.toSorted(() => random() - 0.5);
      const { statistic, pGreater } = spearmanTest(x, y);
      expect(pGreater).toBeCloseTo(shareUpTo[(squares as readonly number[]).indexOf(statistic)]!, 12);
    }
  },
);

test('fourteen levels are tested exactly, and more or many ties by an approximation that is named', () => {
  const x = Array.from({ length: 14 }, (_, k) => k);
  expect(spearmanTest(x, x).pGreater).toBeCloseTo(1 / 87_178_291_200, 20);
  expect(spearmanTest([...x, 14], [...x, 14].reverse())).toMatchObject({ coefficient: -1, method: 'normal' });
  expect(kendallTest([1, 1, 2, 3, 4, 5, 6, 7, 8, 9], [2, 1, 3, 4, 5, 6, 7, 8, 9, 10])).toMatchObject({
    method: 'normal',
  });
});

test('tied values share the mean of their ranks, equal values have no correlation, and short lists are refused', () => {
  expect(meanRanks([3, 1, 3, 2])).toEqual([3.5, 1, 3.5, 2]);
  expect(kendallTest([1, 2, 3], [5, 5, 5])).toMatchObject({ coefficient: NaN, pTwoSided: NaN });
  expect(spearmanTest([1, 2, 3], [5, 5, 5])).toMatchObject({ coefficient: NaN, pTwoSided: NaN });
  expect(() => kendallTest([1], [2])).toThrow('a rank test needs at least two pairs, got 1');
  expect(() => spearmanTest([1, 2], [2])).toThrow('a rank test needs as many values as values, got 2 and 1');
  expect(() => kendallTest([1, NaN], [2, 3])).toThrow('a rank test needs numbers, got NaN');
});
