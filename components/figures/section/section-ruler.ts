import { text, type Mark } from '../scene/scene.ts';
import type { SectionLayout } from './section-layout.ts';
import type { SectionScales } from './section-scales.ts';

/** The ruler under the tooth, in millimetres at the scale of the chart: bars in turn dark and light between its numbers. */
export function sectionRuler(layout: SectionLayout, scales: SectionScales, unit: string): Mark[] {
  const { rulerTop, fontSize } = layout;
  if (rulerTop === undefined) return [];
  const height = Math.round(fontSize * 0.42);
  const step = (scales.valueTicks[1] ?? 1) - (scales.valueTicks[0] ?? 0);
  const bars = scales.valueTicks.slice(0, -1).map((value, index): Mark => ({
    layer: 'ruler',
    role: index % 2 === 0 ? 'bar-dark' : 'bar-light',
    shape: { kind: 'rect', x: scales.x(value), y: rulerTop, width: scales.perMm * step, height },
  }));
  const numbers = scales.valueTicks.map((value): Mark => ({
    layer: 'ruler',
    role: 'value-tick',
    shape: text(scales.x(value), rulerTop + height + fontSize * 1.15, fontSize, String(value), 'middle'),
  }));
  const end = scales.x(scales.valueTicks.at(-1) ?? 0);
  const sign = text(end + fontSize * 0.6, rulerTop + height, fontSize * 0.96, unit);
  return [...bars, ...numbers, { layer: 'ruler', role: 'ruler-end', shape: sign }];
}
