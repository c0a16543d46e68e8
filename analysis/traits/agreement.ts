import { inverseNormal } from '../statistics/index.ts';

/** Comparison of two readings of one thing. */
export interface Agreement {
  readonly difference: number;
  /** How far two such readings may differ at the level asked for. */
  readonly allowed: number;
  readonly agree: boolean;
}

/** Whether two readings, as by callipers and from landmarks, agree within their combined error at a level, 95% if left out. */
export function compareReadings(
  one: { readonly value: number; readonly error: number },
  other: { readonly value: number; readonly error: number },
  level = 0.95,
): Agreement {
  const difference = one.value - other.value;
  const allowed = inverseNormal((1 + level) / 2) * Math.hypot(one.error, other.error);
  return { difference, allowed, agree: Math.abs(difference) <= allowed };
}
