import type { LengthUnit } from '../schema/index.ts';

const millimetres: Record<LengthUnit, number | undefined> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  degrees: undefined,
  count: undefined,
};

/** What one of a unit is in mm, or undefined for degrees and counts. The inch is 25.4 mm exactly (international inch, 1959). */
export function millimetresIn(unit: LengthUnit): number | undefined {
  return millimetres[unit];
}

/** What a measurement is read in. */
export type Quantity = 'length' | 'angle' | 'count';

/** True when a unit can express the quantity. */
export function unitFits(unit: LengthUnit, quantity: Quantity): boolean {
  if (quantity === 'length') return millimetres[unit] !== undefined;
  return quantity === 'angle' ? unit === 'degrees' : unit === 'count';
}
