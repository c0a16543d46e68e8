import { describe, expect, test } from 'vitest';
import { lineageView } from '../../../components/lineage/view.ts';
import { composeSizeChart, logTicks } from '../../../components/trend/compose-size-chart.ts';
import { partSentences, sizeReason, sizeRows, sizeSentence } from '../../../components/trend/size-words.ts';
import type { CompiledSize } from '../../../scripts/compile/contract.ts';
import { risingTips } from '../fixtures/hands.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';

const point = (taxon: string, sizeMm: number, estimate: number) => ({
  taxon,
  sizeMm,
  estimate,
  interval: [estimate * 0.95, estimate * 1.05] as [number, number],
});
const line = [100, 200].map((sizeMm) => ({
  sizeMm,
  median: sizeMm / 2,
  interval: [sizeMm / 4, sizeMm] as [number, number],
}));
const slope = { perLog: 1, interval: [0.9, 1.1] as [number, number], pValue: 0.001, df: 9 };
const row = { tree: 'comb', dating: 'given', slope };
const part = {
  measurement: 'snout',
  rows: [row],
  label: { en: 'snout' },
  slope: { ...slope, perLog: 2, interval: [1.5, 2.5] as [number, number] },
  points: [point('first', 100, 20), point('trunk', 200, 90)],
  line,
  pace: 'faster' as const,
};
const broken = {
  taxon: 'broken',
  sizeMm: 150,
  estimate: null,
  interval: [60, null] as [number, null],
  atLeast: 60,
};
const size: CompiledSize = {
  measurement: 'skull',
  label: { en: 'skull length' },
  verdict: 'larger',
  trait: {
    label: { en: 'Position' },
    slope: { ...slope, perLog: 20, interval: [5, 35] },
    rows: [
      { tree: 'comb', dating: 'given', slope: { ...slope, perLog: -20, interval: [-35, -5] } },
      { tree: 'other', dating: 'equal-share', reason: 'no-scatter' },
    ],
    points: [...part.points, broken],
    line,
  },
  parts: [part, { ...part, measurement: 'face', label: { en: 'face' }, slope, pace: 'cannot-tell' }],
  sizeless: [],
};

function viewWith(own?: CompiledSize) {
  const lineage = inventedLineage(risingTips);
  return lineageView(
    { ...lineage, traits: [{ ...lineage.traits[0]!, ...(own ? { size: own } : {}) }] },
    'en',
  );
}

describe('what is said of size', () => {
  test('a relation is said for a doubling of size, its range rounded outward', () => {
    // 20 · ln 2 = 13.86 points, 5 · ln 2 = 3.47, 35 · ln 2 = 24.26
    expect(sizeSentence(viewWith(size))).toBe(
      'Position: larger animals have higher values, by about 14 percentage points for each doubling of skull length (95% range 3 to 25).',
    );
  });

  test('each length of a share is said by its factor for a doubling, and whether it leaves the pace of size', () => {
    expect(partSentences(viewWith(size))).toEqual([
      'a, snout: a doubling of skull length goes with 4.00 times the length (95% range 2.82 to 5.66). It outgrows the animal.',
      'b, face: a doubling of skull length goes with 2.00 times the length (95% range 1.86 to 2.15). That it leaves the pace of the animal cannot be told.',
    ]);
  });

  test('a length that is the size itself is said to be so, and no line is missed', () => {
    const { slope: _slope, ...own } = part;
    const parts = [part, { ...own, rows: [], reason: 'is-the-size', pace: 'cannot-tell' as const }];
    expect(partSentences(viewWith({ ...size, parts }))[1]).toBe('b, snout: it is the size itself.');
  });

  test('the arithmetic has a row for every tree and rule of dating, with the trait first and both lengths after it', () => {
    expect(sizeRows(viewWith(size))).toEqual([
      ['Position', 'comb', 'its own lengths', '\u221214 percentage points', '\u221225 – \u22123', '0.001'],
      ['Position', 'other', 'equal shares of free time', 'All measured values are the same.', '', ''],
      ['a, snout', 'comb', 'its own lengths', '× 2.00', '1.86 – 2.15', '0.001'],
      ['b, face', 'comb', 'its own lengths', '× 2.00', '1.86 – 2.15', '0.001'],
    ]);
    expect(sizeRows(viewWith())).toEqual([]);
  });

  test('by default one cannot tell, and a trait without a size says nothing', () => {
    const { slope: _slope, ...trait } = size.trait;
    const cannot: CompiledSize = {
      ...size,
      verdict: 'cannot-tell',
      reason: 'predictor-does-not-vary',
      trait,
    };
    expect(sizeSentence(viewWith(cannot))).toMatch(/these bones cannot tell/);
    expect(sizeReason(viewWith(cannot))).toBe('All animals are of one size.');
    expect(sizeSentence(viewWith())).toBe('');
  });
});

describe('the chart of size', () => {
  const words = { across: 'across', up: 'up' };
  const chart = composeSizeChart({
    series: [{ letter: '', points: size.trait.points, line }],
    scale: 'plain',
    words,
  })!;
  const at = (role: string) => chart.marks.find((mark) => mark.role === role && mark.datum === 'broken');

  test('a broken animal is a half disc on a wall with an arrow, never a disc', () => {
    expect(at('half')).toBeDefined();
    expect(at('limit-wall')).toBeDefined();
    expect(at('disc')).toBeUndefined();
  });

  test('larger animals stand higher', () => {
    const height = (taxon: string) => {
      const shape = chart.marks.find((mark) => mark.role === 'disc' && mark.datum === taxon)!.shape;
      return shape.kind === 'circle' ? shape.y : NaN;
    };
    expect(height('trunk')).toBeLessThan(height('first'));
  });

  test('both lengths of one animal are joined, and each line has its letter', () => {
    const both = composeSizeChart({
      series: [
        { letter: 'a', points: part.points, line },
        { letter: 'b', points: part.points.map((each) => ({ ...each, estimate: each.estimate * 2 })), line },
      ],
      scale: 'log',
      words,
    })!;
    expect(both.marks.filter(({ role }) => role === 'series-join')).toHaveLength(2);
    expect(both.marks.filter(({ role }) => role === 'series-letter')).toHaveLength(2);
  });

  test('without a point there is no chart', () => {
    expect(
      composeSizeChart({ series: [{ letter: '', points: [], line: [] }], scale: 'plain', words }),
    ).toBeUndefined();
  });
});

test('ticks of a logarithmic axis are round and inside it', () => {
  expect(logTicks([9, 260])).toEqual([10, 20, 50, 100, 200]);
  expect(logTicks([180, 520])).toEqual([200, 300, 400, 500]);
  expect(logTicks([75, 128])).toEqual([80, 90, 100, 110, 120]);
});
