import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { completenessCsv, featuresCsv, softPartsCsv } from '../../../components/data/material-csv.ts';
import { levelText, softGroups, softParts } from '../../../components/data/soft-parts.ts';
import { lineageView } from '../../../components/lineage/view.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';

const base = inventedLineage(risingTips);
const [one, two] = base.taxa.map(({ id }) => id) as [string, string];
const yesAndNo = [
  { id: 'no', label: { en: 'no' } },
  { id: 'yes', label: { en: 'yes' } },
];
const plain = { ordered: false, scored: [], sources: [], steps: 1, changes: [] };
const sides = [
  { fork: 'fork-2', living: [two], has: true },
  { fork: 'fork-1', living: [one], has: null },
];
const lineage = {
  ...base,
  completeness: {
    elements: [],
    characters: 4,
    taxa: [
      {
        taxon: one,
        specimens: 2,
        best: 40,
        together: 55,
        elements: [
          { element: 'cranium', percent: 60 },
          { element: 'mandible', percent: 50 },
        ],
        scored: 3,
        scoredPercent: 75,
      },
      { taxon: two, specimens: 0, best: null, together: null, elements: [], scored: 0, scoredPercent: 0 },
    ],
  },
  characters: [
    {
      ...plain,
      id: 'crest',
      label: { en: 'crest' },
      states: yesAndNo,
      fit: { minimum: 1, maximum: 3, consistency: 1, retention: null },
      rate: { perMyr: 0.01, logLikelihood: -4, forks: [{ node: 'fork-1', shares: [0.9, 0.1] }] },
    },
    {
      ...plain,
      id: 'comb',
      label: { en: 'comb' },
      states: yesAndNo,
      rate: { perMyr: null, logLikelihood: -3, onBound: 'no-end' as const, forks: [] },
    },
    {
      ...plain,
      id: 'wattle',
      label: { en: 'wattle' },
      states: yesAndNo,
      softPart: {
        state: 'yes',
        brackets: [
          {
            taxon: one,
            sides,
            sign: false,
            readings: [
              { level: 'I' as const, prime: true, verdict: 'decisive positive' as const },
              { level: 'II' as const, prime: true, verdict: 'equivocal' as const },
            ],
          },
          { taxon: two, sides: sides.slice(1), sign: null, readings: [] },
        ],
      },
    },
  ],
};
const rows = (csv: string): Record<string, string>[] => parse(csv, { columns: true });

test('completeness has a row an element, and an animal without any bone has one too', () => {
  expect(rows(completenessCsv(lineage))).toMatchObject([
    { invented: 'true', element: 'cranium', elementPercent: '60', bestPercent: '40', scoredPercent: '75' },
    { element: 'mandible', togetherPercent: '55' },
    { taxon: two, specimens: '0', bestPercent: '', element: '' },
  ]);
});

test('features read back with a state a row, a boundary said, and no soft part among them', () => {
  const read = rows(featuresCsv(lineage));
  expect(read).toMatchObject([
    { character: 'crest', state: 'no', probability: '0.9', consistencyIndex: '1', retentionIndex: '' },
    { character: 'crest', state: 'yes', probability: '0.1' },
    { character: 'comb', onBound: 'no-end', ratePerMyr: '', node: '' },
  ]);
});

test('soft parts give what is known of both sides, every open level, and no level on one side', () => {
  expect(rows(softPartsCsv(lineage))).toMatchObject([
    {
      taxon: one,
      nearHasIt: 'true',
      farHasIt: '',
      markOnBone: 'false',
      levels: "I' II'",
      verdicts: 'decisive positive; equivocal',
    },
    { taxon: two, farLiving: '', markOnBone: '', levels: '', verdicts: '' },
  ]);
  const [{ softPart }] = softParts(lineage) as [ReturnType<typeof softParts>[number]];
  expect(levelText(softPart.brackets[0]!)).toBe('I′ / II′');
  expect(softGroups(lineageView(lineage, 'en'), softPart)).toEqual([
    { level: 'I′ / II′', says: 'speak for it / do not agree', animals: [base.taxa[0]!.name] },
  ]);
});
