import { expect, test } from 'vitest';
import { composePlate } from '../../../components/figures/scene/compose-plate.ts';
import { wide } from '../../../components/figures/scene/layout.ts';
import { plateData } from '../../../components/figures/scene/plate-data.ts';
import { composeChangeChart } from '../../../components/trend/compose-change-chart.ts';
import type { CompiledTrend } from '../../../scripts/compile/contract.ts';
import { risingTips } from '../fixtures/hands.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';

const line = [50, 25, 0].map((at) => ({ at, median: 60 - at, interval: [50 - at, 400] as [number, number] }));
const trend: CompiledTrend = { verdict: 'rises', level: 0.95, taxa: 9, rows: [], line };

function dataWith(own: CompiledTrend) {
  const lineage = inventedLineage(risingTips);
  return plateData(lineage, { ...lineage.traits[0]!, trend: own }, 'en');
}

test('a told trend lies behind every mark and never leaves the chart', () => {
  const scene = composeChangeChart(dataWith(trend), { axis: 'Position' })!;
  const roles = scene.marks.map(({ role }) => role);
  expect(roles.indexOf('trend-band')).toBeLessThan(roles.findIndex((role) => role.startsWith('branch')));
  expect(roles.indexOf('trend-line')).toBeLessThan(roles.indexOf('disc'));
  const band = scene.marks.find(({ role }) => role === 'trend-band')!.shape;
  const xs =
    band.kind === 'path' ? [...band.d.matchAll(/[ML]([\d.]+) /g)].map((match) => Number(match[1])) : [];
  expect(xs).toHaveLength(6);
  expect(Math.max(...xs)).toBeLessThanOrEqual(scene.width);
});

test('where nothing can be told no line is drawn, on the small chart and on the plate', () => {
  const data = dataWith({ ...trend, verdict: 'cannot-tell' });
  expect(composeChangeChart(data, { axis: 'Position' })!.marks.some(({ layer }) => layer === 'trend')).toBe(
    false,
  );
  const row = { word: 'word', note: 'note' };
  const words = {
    ruler: { start: 'start', end: 'end', unit: 'mm' },
    key: { measured: row, bounded: row, inferred: row, unknown: row, bar: row, bed: row },
    breakWord: 'break',
    measure: () => ({ part: 'a', whole: 'b' }),
    value: (taxon: string) => taxon,
    slice: (age: number) => `slice ${age}`,
    interval: (from: number, to: number) => `${from} to ${to}`,
    meaning: [],
  };
  const marksOf = (own: CompiledTrend) =>
    composePlate({ data: dataWith(own), layout: wide, words, anchors: new Map(), slices: [] }).marks;
  expect(marksOf({ ...trend, verdict: 'cannot-tell' }).some(({ layer }) => layer === 'trend')).toBe(false);
  expect(marksOf(trend).filter(({ layer }) => layer === 'trend')).toHaveLength(2);
});

test('charts of a row share their ages', () => {
  const data = dataWith(trend);
  const tick = (oldestMa: number) =>
    composeChangeChart({ ...data, oldestMa }, { axis: 'Position' })!
      .marks.filter(({ role }) => role === 'age-line')
      .map(({ shape }) => (shape.kind === 'path' ? shape.d : ''));
  expect(tick(60)).toEqual(tick(60));
  expect(tick(60)).not.toEqual(tick(90));
});

test('without a single value there is no chart', () => {
  expect(composeChangeChart({ ...dataWith(trend), values: [] }, { axis: 'Position' })).toBeUndefined();
});
