import type { PlateData } from './plate-data.ts';
import type { PlateLayout } from './layout.ts';
import type { Scales } from './scales.ts';
import { path, type Mark } from './scene.ts';

/** The fitted line with its 95% interval, to lie behind all marks; nothing where no trend may be told. */
export function trendMarks(data: PlateData, layout: PlateLayout, scales: Scales): Mark[] {
  const points = data.trend ?? [];
  if (points.length < 2) return [];
  const { left, right } = layout.chart;
  const x = (value: number | null, open: number) =>
    Math.min(right, Math.max(left, value === null ? open : scales.x(value)));
  const low = points.map((point) => [x(point.interval[0], left), scales.y(point.at)] as const);
  const high = points.map((point) => [x(point.interval[1], right), scales.y(point.at)] as const);
  const middle = points.map((point) => [x(point.median, left), scales.y(point.at)] as const);
  return [
    {
      layer: 'trend',
      role: 'trend-band',
      shape: { kind: 'path', d: `${through([...low, ...high.toReversed()])}Z` },
    },
    { layer: 'trend', role: 'trend-line', shape: { kind: 'path', d: through(middle) } },
  ];
}

function through(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], index) => (index === 0 ? path`M${x} ${y}` : path`L${x} ${y}`)).join('');
}
