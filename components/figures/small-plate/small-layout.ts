import { phone, type PlateLayout } from '../scene/layout.ts';
import type { PlateData } from '../scene/plate-data.ts';

/** Outer size of a small plate in pixels, and the size of its marks against the wide plate. */
export interface SmallSize {
  width: number;
  height: number;
  markScale: number;
  /** Whether the interval of a measured value is drawn; at the size of a card it would crowd the discs. */
  whiskers: boolean;
}

/** The size on a card, and on the card of a lineage that has the shelf to itself. */
export const cardSize: SmallSize = { width: 320, height: 220, markScale: 0.6, whiskers: false };
export const wideCardSize: SmallSize = { width: 640, height: 440, markScale: 0.9, whiskers: true };

/**
 * The phone's layout cut down to its chart. The axis ends where the greatest value does, so that a trait which passes its
 * hundred still fits.
 */
export function smallLayout(data: PlateData, { width, height, markScale }: SmallSize): PlateLayout {
  const margin = 18 * markScale;
  const [left, right, top, bottom] = [margin, width - margin, margin, height - margin * 0.6];
  const room = right - left - 14 * markScale;
  const greatest = Math.max(100, ...data.values);
  const least = Math.min(0, ...data.values);
  const perUnit = room / (greatest - least);
  const zero = left + 14 * markScale - least * perUnit;
  return {
    ...phone,
    width,
    height,
    markScale,
    column: { left, width: 0, turned: true },
    chart: { left, right, top, bottom },
    axis: { zero, hundred: zero + perUnit * 100 },
  };
}
