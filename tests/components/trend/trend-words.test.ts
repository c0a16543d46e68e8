import { describe, expect, test } from 'vitest';
import { lineageView } from '../../../components/lineage/view.ts';
import { interfaceLanguages, voiceOf } from '../../../components/messages/say.ts';
import { changeText, probabilityText } from '../../../components/trend/change-text.ts';
import {
  fittedText,
  rankText,
  trendReason,
  trendRows,
  trendSentence,
} from '../../../components/trend/trend-words.ts';
import type { CompiledTrend } from '../../../scripts/compile/contract.ts';
import { risingTips } from '../fixtures/hands.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';

const slope = { perMyr: 0.6, interval: [0.055, 1.151] as [number, number], pValue: 0.0327, df: 19 };
const ages = { sets: 201, rising: 200, falling: 1, perMyr: [-0.1, 0.7] as [number, number] };
const rises: CompiledTrend = {
  verdict: 'rises',
  level: 0.95,
  taxa: 21,
  rows: [
    { tree: 'main', dating: 'equal-share', slope, ages },
    { tree: 'rival', dating: 'given', reason: 'not-dated', ages: { ...ages, sets: 0 } },
  ],
  line: [
    { at: 51, median: 13.1, interval: [2, 24] },
    { at: 0, median: 43.8, interval: [18, 70] },
  ],
  rank: { tau: -0.2297, pValue: 0.323, draws: 999 },
};

function viewWith(trend: CompiledTrend | undefined, language = 'en') {
  const lineage = inventedLineage(risingTips);
  const [trait] = lineage.traits;
  return lineageView({ ...lineage, traits: [{ ...trait!, ...(trend ? { trend } : {}) }] }, language);
}

describe('what is said of a trend', () => {
  test('a told trend is said with its change a million years and its range, rounded outward', () => {
    expect(trendSentence(viewWith(rises))).toBe(
      'Position: it rises through time over 21 measured relatives, by about 0.60 percentage points every million years (95% range 0.05 to 1.16).',
    );
  });

  test('a fall is said as a positive amount', () => {
    const down = { ...slope, perMyr: -0.6, interval: [-1.151, -0.055] as [number, number] };
    const falls: CompiledTrend = { ...rises, verdict: 'falls', rows: [{ ...rises.rows[0]!, slope: down }] };
    expect(trendSentence(viewWith(falls))).toContain(
      'it falls through time over 21 measured relatives, by about 0.60',
    );
    expect(trendSentence(viewWith(falls))).toContain('(95% range 0.05 to 1.16)');
  });

  test.each(Object.keys(interfaceLanguages))('without anything known, one cannot tell, in %s', (language) => {
    const said = trendSentence(viewWith(undefined, language));
    expect(said).toBe(voiceOf(language).say('trend.said.cannot-tell', { trait: 'Position' }));
  });

  test('a trend that is not told has its reason, and no line in words', () => {
    const cannot: CompiledTrend = { ...rises, verdict: 'cannot-tell', reason: 'not-clear' };
    expect(trendReason(viewWith(cannot))).toMatch(/^No change at all/);
    expect(fittedText(viewWith(cannot))).toBe('');
    expect(trendReason(viewWith(rises))).toBe('');
  });

  test('the line is said from its old end to today', () => {
    expect(fittedText(viewWith(rises))).toMatch(/from 13% at 51 million years ago to 44% today/);
  });

  test('each tree has its row: chance, same way over other ages, or why there is no slope', () => {
    const [first, second] = trendRows(viewWith(rises));
    expect(first).toMatchObject({ range: '0.05 – 1.16', chance: '0.033', ages: '200 of 201' });
    expect(second).toMatchObject({ slope: 'This rule cannot date this tree.', range: '', ages: '' });
  });

  test('ranks are called a description', () => {
    expect(rankText(viewWith(rises))).toMatch(/tau .* is −0\.23.* 32% .*description, not the test/);
  });
});

test('a change on log scale is said in per cent, by the exact factor and not by its logarithm', () => {
  const text = changeText(
    { perMyr: Math.log(1.5), interval: [Math.log(1.2), Math.log(1.9)] },
    { scale: 'log', unit: 'mm' },
    voiceOf('en'),
  );
  expect(text).toMatchObject({ change: '50%', low: '20', high: '90' });
});

test('a chance is never printed as nothing', () => {
  expect(probabilityText(1e-9, voiceOf('en'))).toBe('< 0.001');
  expect(probabilityText(0.0327, voiceOf('es'))).toBe('0,033');
});
