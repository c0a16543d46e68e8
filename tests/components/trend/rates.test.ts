import { expect, test } from 'vitest';
import { lineageView } from '../../../components/lineage/view.ts';
import { composeRateChart } from '../../../components/trend/compose-rate-chart.ts';
import { ratesSentence } from '../../../components/trend/rates-words.ts';
import { risingTips } from '../fixtures/hands.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';

const pair = (myr: number, darwins: number) => ({
  id: `a${myr}`,
  myr,
  darwins,
  standardError: darwins,
});
const words = {
  across: 'time',
  up: 'darwins',
  guides: ['steady', 'wandering', 'still'] as const,
  number: String,
};

test('a rate is never said without the time it was measured over', () => {
  const lineage = inventedLineage(risingTips);
  const slope = { perMyr: 0.0118, interval: [0.0033, 0.0202] as [number, number], pValue: 0.01, df: 9 };
  const ages = { sets: 1, rising: 1, falling: 0, perMyr: [0.01, 0.01] as [number, number] };
  const point = (at: number) => ({ at, median: 200, interval: [100, 300] as [number, number] });
  const trend = {
    verdict: 'rises' as const,
    level: 0.95,
    taxa: 9,
    rows: [{ tree: 'comb', dating: 'given', slope, ages }],
    line: [point(51), point(0)],
  };
  const trait = { ...lineage.traits[0]!, trend, rates: { pairs: [] } };
  expect(ratesSentence(lineageView({ ...lineage, traits: [trait] }, 'en'))).toBe(
    'Position: the fitted line changes at 0.012 darwins over 51 million years (95% range 0.003 to 0.021).',
  );
  expect(
    ratesSentence(lineageView({ ...lineage, traits: [{ ...trait, trend: { ...trend, line: [] } }] }, 'en')),
  ).toBe('');
});

test('a pair that does not differ has no place on a logarithmic axis, and fewer than two give no chart', () => {
  expect(composeRateChart({ points: [pair(5, 0.1), pair(20, 0)] }, words)).toBeUndefined();
  const chart = composeRateChart({ points: [pair(5, 0.1), pair(10, 0.05), pair(20, 0)] }, words)!;
  expect(chart.marks.filter(({ role }) => role === 'disc')).toHaveLength(2);
});

test('longer times stand to the right, faster rates higher, and error bars end inside the chart', () => {
  const chart = composeRateChart({ points: [pair(5, 0.1), pair(50, 0.01)] }, words)!;
  const discs = chart.marks.flatMap(({ role, shape }) =>
    role === 'disc' && shape.kind === 'circle' ? shape : [],
  );
  expect(discs[1]!.x).toBeGreaterThan(discs[0]!.x);
  expect(discs[1]!.y).toBeGreaterThan(discs[0]!.y);
  for (const { role, shape } of chart.marks)
    if (role === 'whisker' && shape.kind === 'path')
      for (const [, height] of shape.d.matchAll(/(?:V| )(-?[\d.]+)/g)) {
        expect(Number(height)).toBeGreaterThanOrEqual(0);
        expect(Number(height)).toBeLessThanOrEqual(chart.height);
      }
});

test('a fitted line runs from the shortest time to the longest, and a crowd of points has no error bars', () => {
  const points = Array.from({ length: 30 }, (_, k) => pair(1 + k, 0.3 / (1 + k)));
  const chart = composeRateChart({ points, line: { slope: -1, intercept: Math.log(0.3) } }, words)!;
  expect(chart.marks.filter(({ role }) => role === 'whisker')).toEqual([]);
  const discs = chart.marks.flatMap(({ role, shape }) =>
    role === 'disc' && shape.kind === 'circle' ? shape : [],
  );
  const shape = chart.marks.find(({ role }) => role === 'rate-line')!.shape;
  const ends = shape.kind === 'path' ? shape.d.match(/-?[\d.]+/g)!.map(Number) : [];
  expect(ends[0]).toBeCloseTo(discs[0]!.x, 0);
  expect(ends[1]).toBeCloseTo(discs[0]!.y, 0);
  expect(ends.at(-1)).toBeCloseTo(discs.at(-1)!.y, 0);
});

test('names of the guides stand a line apart where their lines end close together', () => {
  for (const [first, second] of [
    [9, 10],
    [1, 40],
  ] as const) {
    const chart = composeRateChart({ points: [pair(first, 0.1), pair(second, 0.09)] }, words)!;
    const heights = chart.marks.flatMap(({ role, shape }) =>
      role === 'axis-word' &&
      shape.kind === 'text' &&
      words.guides.some((guide) => guide === shape.runs[0]!.text)
        ? shape.y
        : [],
    );
    expect(heights).toHaveLength(3);
    expect(heights[1]! - heights[0]!).toBeGreaterThanOrEqual(15);
    expect(heights[2]! - heights[1]!).toBeGreaterThanOrEqual(15);
  }
});
