import { scaleLinear } from 'd3';
import type { PlateData } from './plate-data.ts';
import type { PlateLayout } from './layout.ts';

/** The two axes of a plate. */
export interface Scales {
  /** Pixels from the left for a trait value. */
  x(value: number): number;
  /** Pixels from the top for an age in Ma; the present is at the top. */
  y(ageMa: number): number;
  /** Pixels for one unit of the trait. */
  unit: number;
  /** Values that the chart reaches on either side, in trait units. */
  reach: readonly [number, number];
  /** Age at the foot of the chart, Ma. */
  oldestMa: number;
  valueTicks: number[];
  ageTicks: number[];
}

/**
 * Scales for a layout. A trait with a hundred (a share of a measured line) is drawn to the skull's own ruler; any
 * other is spread over the chart. Ages run from today to the tree's root.
 */
export function plateScales(data: PlateData, layout: PlateLayout): Scales {
  const { chart, axis } = layout;
  const x = data.ruler
    ? scaleLinear([0, 100], [axis.zero, axis.hundred])
    : scaleLinear(paddedRange(data.values), [axis.zero, chart.right - 24]).nice();
  const oldestMa = Math.max(10, Math.ceil(data.oldestMa + 0.5));
  const y = scaleLinear([0, oldestMa], [chart.top, chart.bottom]);
  return {
    x: (value) => x(value),
    y: (ageMa) => y(ageMa),
    unit: x(1) - x(0),
    reach: [x.invert(chart.left), x.invert(chart.right)],
    oldestMa,
    valueTicks: data.ruler ? [0, 20, 40, 60, 80, 100] : x.ticks(5),
    ageTicks: y.ticks(oldestMa > 30 ? 6 : 4),
  };
}

function paddedRange(values: readonly number[]): [number, number] {
  if (values.length === 0) return [0, 1];
  const low = Math.min(...values);
  const high = Math.max(...values);
  const margin = (high - low || Math.abs(high) || 1) * 0.06;
  return [low - margin, high + margin];
}
