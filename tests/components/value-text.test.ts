import { expect, test } from 'vitest';
import { voiceOf } from '../../components/messages/say.ts';
import { decimalsOfError, halfWidthOf } from '../../analysis/statements/index.ts';
import { valueText } from '../../components/messages/value-text.ts';
import type { CompiledValue } from '../../scripts/compile/contract.ts';

const voice = voiceOf('en');
const blank: CompiledValue = {
  taxon: 'bria',
  status: 'unknown',
  estimate: null,
  interval: [null, null],
  level: 0.95,
  method: 'none',
  df: null,
  standardError: null,
  n: 0,
  specimens: [],
  leftOut: [],
  facets: [],
  placedMa: null,
};

test('a measured value is rounded to the place of its own error', () => {
  const value: CompiledValue = { ...blank, status: 'measured', estimate: 14.27, interval: [12.5, 16.04] };
  expect(valueText(value, voice).printed).toBe('14 ± 2');
});

test('a small error keeps its decimals, in the value too', () => {
  const value: CompiledValue = { ...blank, status: 'measured', estimate: 2.3456, interval: [2.3156, 2.3756] };
  expect(decimalsOfError(halfWidthOf(value.interval))).toBe(2);
  expect(valueText(value, voice).printed).toBe('2.35 ± 0.03');
});

test('an error of half a unit and more is written in whole units', () => {
  const value: CompiledValue = { ...blank, status: 'measured', estimate: 108.1, interval: [107.2, 109] };
  expect(valueText(value, voice).printed).toBe('108 ± 1');
});

test('a lower limit is rounded down and an upper limit up, away from what it excludes', () => {
  const lower: CompiledValue = {
    ...blank,
    status: 'bounded',
    interval: [31.96, null],
    limits: { atLeast: 31.96, specimen: 'x' },
  };
  const upper: CompiledValue = {
    ...blank,
    status: 'bounded',
    interval: [null, 31.04],
    limits: { atMost: 31.04, specimen: 'x' },
  };
  expect(valueText(lower, voice).printed).toBe('at least 31');
  expect(valueText(upper, voice).printed).toBe('at most 32');
});

test('an inferred value carries its interval, widened by rounding and never narrowed', () => {
  const value: CompiledValue = { ...blank, status: 'inferred', estimate: 41.6, interval: [29.9, 53.1] };
  expect(valueText(value, voice).printed).toBe('42 [29–54]');
  expect(valueText(value, voice).range).toBe('29–54');
});

test('an unknown value is words without a digit', () => {
  const { printed, spoken, range } = valueText(blank, voice);
  expect(printed + spoken + range).not.toMatch(/\d/);
});
