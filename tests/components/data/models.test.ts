import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { modelsCsv, significant } from '../../../components/data/models.ts';
import { voiceOf } from '../../../components/messages/say.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';

const base = inventedLineage(risingTips);
const lineage = {
  ...base,
  traits: [
    {
      ...base.traits[0]!,
      model: {
        name: 'brownian',
        tree: 'comb',
        seed: 1,
        df: 8,
        rateMedian: 2.5,
        rateReml: 2.25,
        logLikelihood: -12,
        limits: { method: 'none' as const, reported: true },
        compared: [
          { name: 'brownian', logLikelihood: -12, parameters: 2, aicc: 30 },
          { name: 'trend', logLikelihood: -11.5, parameters: 3, aicc: 33 },
        ],
      },
      sensitivity: [
        {
          name: 'lambda' as const,
          parameter: 1,
          logLikelihood: -12,
          parameters: 3,
          aicc: 34,
          onBound: 'highest' as const,
        },
      ],
    },
  ],
};

test('every model has a row, the rate stands with the one that is used, and an end of a range is said', () => {
  const rows: Record<string, string>[] = parse(modelsCsv(lineage), { columns: true });
  expect(rows).toMatchObject([
    { model: 'brownian', used: 'true', rateMedian: '2.5', rateDf: '8', pooledDf: '30' },
    { model: 'trend', used: 'false', parameter: '', aicc: '33', rateMedian: '' },
    { model: 'lambda', parameter: '1', onBound: 'highest' },
  ]);
  expect(modelsCsv(base).trim().split('\r\n')).toHaveLength(1);
});

test('a number of any size is printed with three digits that count', () => {
  const voice = voiceOf('en');
  expect([9.4701, 123.4, 0.0021755, 0, -0.60288].map((value) => significant(value, voice))).toEqual([
    '9.47',
    '123',
    '0.00218',
    '0',
    '−0.603',
  ]);
});
