import type { ChartMeasure } from './slice-chart.ts';

type Axis = Pick<ChartMeasure, 'top' | 'bottom' | 'oldestMa'>;

/** Height of an age on the chart. */
export function heightOfAge({ top, bottom, oldestMa }: Axis, ageMa: number): number {
  return top + (ageMa / oldestMa) * (bottom - top);
}

/** Age at a height of the chart; outside it, beyond its ends. */
export function ageAtHeight({ top, bottom, oldestMa }: Axis, y: number): number {
  return ((y - top) / (bottom - top)) * oldestMa;
}

/** Where a branch stands across the chart at a height; above its last point it goes straight on. */
export function acrossAt(line: readonly number[], y: number): number {
  for (let index = 2; index < line.length; index += 2) {
    const [x, height] = [line[index]!, line[index + 1]!];
    if (height > y) continue;
    const [beforeX, before] = [line[index - 2]!, line[index - 1]!];
    const share = before === height ? 1 : Math.min(1, Math.max(0, (before - y) / (before - height)));
    return beforeX + (x - beforeX) * share;
  }
  return line.at(-2)!;
}
