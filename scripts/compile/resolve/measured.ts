import type { Measurement } from '../schema/index.ts';
import type { Span } from '../source/source-text.ts';
import type { Quantity } from './units.ts';

/** Readings of one measurement on one specimen from one source, in mm, degrees or as a count. */
export interface Reading {
  values: number[];
  /** The author's plus or minus (95%) where the value is approximate. */
  approximate: number | undefined;
  /** The lost landmark, when it was measured up to a break. */
  toBreak: string | undefined;
  from: 'callipers' | 'literature';
  preferred: boolean;
  span: Span;
}

/** What a measurement of the scheme is: a length unless it says otherwise. */
export function quantityOf(measurement: Measurement): Quantity {
  if (measurement.angle) return 'angle';
  return measurement.count ? 'count' : 'length';
}
