import { expect, test } from 'vitest';
import { estimateTrait } from '../../../analysis/estimate/index.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import { leftOutReference as known } from '../../reference/nine-tips-left-out.ts';

test.each([
  ['Brownian motion without G', ['G'], 'brownian', known.withoutG],
  ['Brownian motion without G and C', ['G', 'C'], 'brownian', known.withoutGAndC],
  ['a trend without G', ['G'], 'trend', known.trendWithoutG],
] as const)(
  'every tip left out by %s is predicted with the t interval of the rest',
  (_name, missing, model, rows) => {
    const answer = estimateTrait({ tree, observations: observe(missing, false), model, leaveOneOut: true });
    if (!answer.estimated) throw new Error(answer.reason);
    expect(answer.leaveOneOut.map(({ taxon }) => taxon)).toEqual(rows.map(({ taxon }) => taxon));
    answer.leaveOneOut.forEach(({ median, interval, miss, observed }, index) => {
      const { predicted, low, high } = rows[index]!;
      expect(median).toBeCloseTo(predicted, 7);
      expect(interval[0]).toBeCloseTo(low, 6);
      expect(interval[1]).toBeCloseTo(high, 6);
      expect(miss).toBeCloseTo(observed - predicted, 7);
    });
  },
);
