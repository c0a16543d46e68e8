import { resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { lineageView, type LineageView } from '../../../components/lineage/view.ts';
import { findSeries } from '../../../components/series/compose-series.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

let view: LineageView;
beforeAll(async () => {
  const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../../content/reed-trunks'));
  view = lineageView(compiled!, 'en');
});

describe('the series of a lineage', () => {
  test('stands every drawn skull over its age, in order and numbered from the oldest', () => {
    const { skulls, ticks } = findSeries(view, 'line')!;
    expect(skulls).toHaveLength(view.lineage.drawings.length);
    const [first, second] = ticks;
    const perMa = (second!.x - first!.x) / (second!.ageMa - first!.ageMa);
    const age = (taxon: string) => view.findValue(taxon)!.placedMa!;
    for (const { taxon, middle, left, width } of skulls) {
      expect(middle).toBeCloseTo(first!.x + perMa * age(taxon), 6);
      expect(left + width / 2).toBeCloseTo(middle, 6);
    }
    const numbered = [...skulls].sort((one, other) => one.number - other.number);
    expect(numbered.map(({ taxon }) => age(taxon))).toEqual(
      skulls.map(({ taxon }) => age(taxon)).sort((one, other) => other - one),
    );
  });

  test('keeps to the sheet', () => {
    for (const scale of ['line', 'size'] as const) {
      const series = findSeries(view, scale)!;
      for (const { left, top, width, height } of series.skulls) {
        expect(left).toBeGreaterThanOrEqual(0);
        expect(left + width).toBeLessThanOrEqual(series.width);
        expect(top).toBeGreaterThanOrEqual(0);
        expect(top + height).toBeLessThanOrEqual(series.axisTop);
      }
    }
  });

  test('has one scale of the measured line, or one of millimetres with a bar that says so', () => {
    const line = findSeries(view, 'line')!;
    expect(new Set(line.skulls.map(({ scale }) => scale)).size).toBe(1);
    expect(line.bar).toBeUndefined();
    const size = findSeries(view, 'size')!;
    for (const { taxon, scale } of size.skulls) {
      const { mmPerUnit } = view.lineage.drawings.find((drawing) => drawing.taxon === taxon)!;
      expect(scale / mmPerUnit!).toBeCloseTo(size.bar!.pixels / size.bar!.mm, 9);
    }
  });

  test('names skulls without a recorded size, which true size cannot show', () => {
    const { mmPerUnit: _, ...bare } = view.lineage.drawings[0]!;
    const lineage = { ...view.lineage, drawings: [bare, ...view.lineage.drawings.slice(1)] };
    const series = findSeries(lineageView(lineage, 'en'), 'size')!;
    expect(series.without).toEqual([bare.taxon]);
    expect(series.skulls.some(({ taxon }) => taxon === bare.taxon)).toBe(false);
  });

  test('is none of a single skull', () => {
    const lineage = { ...view.lineage, drawings: view.lineage.drawings.slice(0, 1) };
    expect(findSeries(lineageView(lineage, 'en'), 'line')).toBeUndefined();
  });
});
