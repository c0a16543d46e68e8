import { expect, test } from 'vitest';
import { kendallTest, meanRanks, spearmanTest } from '../../../analysis/trend/index.ts';

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
