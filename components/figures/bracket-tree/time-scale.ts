import { ticks } from 'd3';
import type { BracketData } from './bracket-data.ts';
import type { BracketLayout } from './bracket-layout.ts';
import { tipLabel } from './tip-label.ts';

/** The axis of a bracket tree: time runs to the right and ends today. */
export interface TimeScale {
  left: number;
  /** Where today stands. */
  right: number;
  oldestMa: number;
  x(ageMa: number): number;
  ticks: number[];
}

/**
 * The widest scale at which every name still fits behind the end of its own line: an animal that died out long ago has
 * its name over the years after it.
 */
export function timeScale(data: BracketData, layout: BracketLayout): TimeScale {
  const left = layout.fontSize * 1.1;
  const oldestMa = Math.max(1, data.oldestMa);
  const fits = [...data.tips.values()].map((tip) => {
    const room = layout.width - left - tipLabel(tip, layout).width - nameGap(layout) - 6;
    const span = oldestMa - (tip.known?.lastMa ?? data.kin.agesMa.get(tip.id) ?? 0);
    return span > 0 ? room / span : Infinity;
  });
  const perMa = Math.max(0, Math.min(...fits, (layout.width - left - layout.fontSize * 2) / oldestMa));
  return {
    left,
    right: left + oldestMa * perMa,
    oldestMa,
    x: (ageMa) => left + (oldestMa - ageMa) * perMa,
    ticks: ticks(0, oldestMa, oldestMa > 30 ? 6 : 4),
  };
}

/** From the end of a line to its name: past the mark, which may stand there. */
export function nameGap(layout: BracketLayout): number {
  return 13 * layout.markScale;
}
