import type { Branch } from './branch-list.ts';
import type { PlateLayout } from './layout.ts';
import type { Scales } from './scales.ts';
import { path, type Mark, type Shape } from './scene.ts';
import { sliceCaption } from './slice.ts';

/** What a plate calls an interval, so that a step can call it up. */
export function intervalId(fromMa: number, toMa: number): string {
  return `interval-${fromMa}-${toMa}`;
}

/** The branches that lived at some time between two ages. */
export function branchesBetween(branches: readonly Branch[], fromMa: number, toMa: number): Branch[] {
  return branches.filter((branch) => branch.from.ageMa > toMa && fromMa >= branch.lastMa);
}

/** A stretch of time across the plate with a line at either end, and its words beside it. */
export function intervalMarks(
  [fromMa, toMa]: readonly [number, number],
  layout: PlateLayout,
  scales: Scales,
  words: string,
): Mark[] {
  const { left, right } = layout.chart;
  const [top, bottom] = [scales.y(toMa), scales.y(fromMa)];
  const datum = intervalId(fromMa, toMa);
  const mark = (role: string, shape: Shape): Mark => ({ layer: 'slices', role, datum, shape });
  return [
    mark('interval-band', { kind: 'rect', x: left, y: top, width: right - left, height: bottom - top }),
    ...[top, bottom].map((y) => mark('slice-line', { kind: 'path', d: path`M${left} ${y}H${right}` })),
    ...sliceCaption(words, (top + bottom) / 2, layout).map((shape) => mark('slice-words', shape)),
  ];
}
