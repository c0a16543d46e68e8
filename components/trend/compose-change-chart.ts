import { branchMarks, drawnBranches } from '../figures/scene/branches.ts';
import { phone, type PlateLayout } from '../figures/scene/layout.ts';
import type { PlateData } from '../figures/scene/plate-data.ts';
import { plateScales, type Scales } from '../figures/scene/scales.ts';
import { line, text, type Mark, type Scene } from '../figures/scene/scene.ts';
import { statusMarks } from '../figures/scene/status-marks.ts';
import { trendMarks } from '../figures/scene/trend-band.ts';

/** Size of one chart of a row in pixels. */
export const chartSize = { width: 400, height: 330 };

/** Words on a chart. */
export interface ChartWords {
  /** Name of the trait with its unit, under the axis. */
  axis: string;
}

/**
 * One small chart of a row that shares its ages: trait across, time upward, the marks of the plate without names, and the
 * fitted line behind them where one may be told. Undefined when no animal has a value.
 */
export function composeChangeChart(data: PlateData, words: ChartWords): Scene | undefined {
  if (data.values.length === 0) return undefined;
  const layout = chartLayout(data);
  const scales = plateScales(data, layout);
  const placed = statusMarks(data, layout, scales).filter(({ taxon }) => taxon.status !== 'unknown');
  const inferred = placed.filter(({ taxon }) => taxon.status === 'inferred');
  const others = placed.filter(({ taxon }) => taxon.status !== 'inferred');
  return {
    ...chartSize,
    marks: [
      ...axes(data, layout, scales, words),
      ...trendMarks(data, layout, scales),
      ...branchMarks(drawnBranches(data.branches, placed, scales, layout.markScale)),
      ...[...inferred, ...others].flatMap(({ marks }) => marks),
    ],
  };
}

function chartLayout(data: PlateData): PlateLayout {
  const { width, height } = chartSize;
  const [left, right] = [38, width - 10];
  const room = right - left - 24;
  const greatest = Math.max(100, ...data.values);
  const least = Math.min(0, ...data.values);
  const zero = left + 12 - (least * room) / (greatest - least);
  return {
    ...phone,
    width,
    height,
    fontSize: 13,
    markScale: 0.66,
    chart: { left, right, top: 28, bottom: height - 46 },
    axis: { zero: data.ruler ? zero : left + 12, hundred: zero + (room * 100) / (greatest - least) },
  };
}

function axes(data: PlateData, layout: PlateLayout, scales: Scales, words: ChartWords): Mark[] {
  const { chart, fontSize: size } = layout;
  const mark = (role: string, shape: Mark['shape']): Mark => ({ layer: 'grid', role, shape });
  const foot = chart.bottom + size * 1.25;
  return [
    mark('age-unit', text(chart.left - 7, chart.top - size, size * 0.92, 'Ma', 'end')),
    ...scales.ageTicks.flatMap((age) => [
      mark('age-line', line(chart.left, scales.y(age), chart.right, scales.y(age))),
      mark('age-tick', text(chart.left - 7, scales.y(age) + size * 0.34, size, String(age), 'end')),
    ]),
    ...scales.valueTicks
      .filter((value) => scales.x(value) <= chart.right)
      .flatMap((value) => [
        mark(
          data.ruler && (value === 0 || value === 100) ? 'value-line value-end' : 'value-line',
          line(scales.x(value), chart.top, scales.x(value), chart.bottom),
        ),
        mark('value-tick', text(scales.x(value), foot, size, String(value), 'middle')),
      ]),
    mark('axis-word', text((chart.left + chart.right) / 2, foot + size * 1.35, size, words.axis, 'middle')),
  ];
}
