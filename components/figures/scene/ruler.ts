import type { PlateData } from './plate-data.ts';
import type { PlateLayout } from './layout.ts';
import type { Scales } from './scales.ts';
import { line, text, textWidth, type Mark } from './scene.ts';

/** Words of the ruler, in the page's language. */
export interface RulerWords {
  start: string;
  end: string;
  /** Sign of the unit, for a plain axis. */
  unit: string;
}

/**
 * The axis under the skull. For a share of a measured line it is a ruler of ten bars, at the scale of chart and
 * skull alike; for any other trait a plain axis with its unit.
 */
export function ruler(data: PlateData, layout: PlateLayout, scales: Scales, words: RulerWords): Mark[] {
  const labels = scales.valueTicks.map((value): Mark => ({
    layer: 'ruler',
    role: 'value-tick',
    shape: text(
      scales.x(value),
      layout.rulerTop + barHeight(layout) + layout.fontSize * 1.15,
      layout.fontSize,
      String(value),
      'middle',
    ),
  }));
  return data.ruler
    ? [...bars(layout, scales), ...labels, ...ends(layout, scales, words)]
    : [...plainAxis(layout, scales, words.unit), ...labels];
}

function barHeight(layout: PlateLayout): number {
  return Math.round(layout.fontSize * 0.42);
}

function bars(layout: PlateLayout, scales: Scales): Mark[] {
  return Array.from({ length: 10 }, (_, index): Mark => ({
    layer: 'ruler',
    role: index % 2 === 0 ? 'bar-dark' : 'bar-light',
    shape: {
      kind: 'rect',
      x: scales.x(index * 10),
      y: layout.rulerTop,
      width: scales.unit * 10,
      height: barHeight(layout),
    },
  }));
}

function ends(layout: PlateLayout, scales: Scales, words: RulerWords): Mark[] {
  const y = layout.rulerTop + barHeight(layout) / 2 + layout.fontSize * 0.34;
  const size = layout.fontSize * 0.96;
  const room = { start: scales.x(0) - 9, end: layout.width - scales.x(100) - 10 };
  const marks: Mark[] = [];
  if (textWidth(words.start, size) <= room.start)
    marks.push({
      layer: 'ruler',
      role: 'ruler-start',
      shape: text(scales.x(0) - 7, y, size, words.start, 'end'),
    });
  if (textWidth(words.end, size) <= room.end)
    marks.push({ layer: 'ruler', role: 'ruler-end', shape: text(scales.x(100) + 8, y, size, words.end) });
  return marks;
}

function plainAxis(layout: PlateLayout, scales: Scales, unit: string): Mark[] {
  const y = layout.rulerTop + barHeight(layout);
  const end = scales.x(scales.reach[1]);
  return [
    { layer: 'ruler', role: 'axis', shape: line(scales.x(scales.reach[0]), y, end, y) },
    {
      layer: 'ruler',
      role: 'ruler-end',
      shape: text(end, y - layout.fontSize * 0.5, layout.fontSize, unit, 'end'),
    },
  ];
}
