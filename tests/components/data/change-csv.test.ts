import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { congruenceCsv, ghostsCsv, trendsCsv } from '../../../components/data/change-csv.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';

const ages = { sets: 3, rising: 2, falling: 1, perMyr: [-1, 1] as [number, number] };
const base = inventedLineage(risingTips);
const lineage = {
  ...base,
  traits: [
    {
      ...base.traits[0]!,
      trend: {
        verdict: 'cannot-tell' as const,
        reason: 'not-clear',
        level: 0.95,
        taxa: 9,
        rows: [
          {
            tree: 'comb',
            dating: 'given',
            slope: { perMyr: 0.5, interval: [-1, 2] as [number, number], pValue: 0.4, df: 7 },
            ages,
          },
          { tree: 'rival', dating: 'given', reason: 'not-dated', ages },
        ],
        line: [],
      },
    },
  ],
  ghosts: [{ node: 'first', taxon: 'first', fromMa: 60, toMa: 52 }],
  congruence: [
    {
      tree: 'comb',
      taxa: 12,
      gapMyr: 8,
      consistency: 0.5,
      completeness: -10,
      gapExcessRatio: 0.7,
      gapRatio: 0.4,
      permutations: { draws: 99, pValue: 0.01, meanGapMyr: 50 },
    },
  ],
};
const rows = (csv: string): Record<string, string>[] => parse(csv, { columns: true });

test('a trend has a row for every tree and rule, with its verdict, or the reason for no slope', () => {
  const [first, second] = rows(trendsCsv(lineage));
  expect(first).toMatchObject({
    invented: 'true',
    verdict: 'cannot-tell',
    perMyrOnScale: '0.5',
    rising: '2',
  });
  expect(second).toMatchObject({ perMyrOnScale: '', reason: 'not-dated' });
});

test('ghosts and congruence read back as they were, and say that they are invented', () => {
  expect(rows(ghostsCsv(lineage))).toMatchObject([
    { invented: 'true', tree: 'comb', taxon: 'first', fromMa: '60', toMa: '52' },
  ]);
  expect(rows(congruenceCsv(lineage))).toMatchObject([
    { invented: 'true', tree: 'comb', relativeCompletenessPercent: '-10', permutations: '99' },
  ]);
});

test('a lineage without trends gives tables with a header alone', () => {
  expect(trendsCsv(base).split('\r\n')).toHaveLength(2);
});
