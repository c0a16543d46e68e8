import { angleDegrees, angleErrorDegrees } from './angle.ts';
import type { Point } from './point.ts';
import { ratioOf, type Reading } from './ratio.ts';

/** What a broken specimen would read with so many millimetres of the lost part restored along the axis. */
export interface BrokenReading {
  readonly valueAt: (lostMm: number) => number;
  /** Standard error of the reading with so much restored, the restored length taken as known. */
  readonly errorAt: (lostMm: number) => number;
  /** What the reading comes to if the lost part had no end; undefined where it grows without end. */
  readonly atInfinity?: number;
}

/** Ratio of two broken lengths: the lost part adds to the part, the whole, or both. `times` is 100 for a percentage. */
export function brokenRatio(question: {
  readonly part: Reading;
  readonly whole: Reading;
  readonly lostAddsTo: 'both' | 'part' | 'whole';
  readonly correlation?: number;
  readonly times?: number;
}): BrokenReading {
  const { part, whole, lostAddsTo, correlation = 0, times = 1 } = question;
  if (!(whole.mm > 0)) throw new Error(`a ratio needs a whole above 0 mm, got ${whole.mm}`);
  const toPart = lostAddsTo === 'whole' ? 0 : 1;
  const toWhole = lostAddsTo === 'part' ? 0 : 1;
  const at = (lostMm: number) =>
    ratioOf(
      { mm: part.mm + toPart * lostMm, error: part.error },
      { mm: whole.mm + toWhole * lostMm, error: whole.error },
      { correlation, times },
    );
  const reading = {
    valueAt: (lostMm: number) => at(lostMm).value,
    errorAt: (lostMm: number) => at(lostMm).error,
  };
  return toWhole === 1 ? { ...reading, atInfinity: toPart * times } : reading;
}

/** Length of which an end is lost. */
export function brokenLength(length: Reading): BrokenReading {
  return { valueAt: (lostMm) => length.mm + lostMm, errorAt: () => length.error };
}

/**
 * Angle at a vertex whose first arm ends at a break: its true end lies so far beyond the break, in a direction of
 * length 1. With the arm without end the angle is that of the direction itself.
 */
export function brokenAngle(question: {
  readonly breakPoint: Point;
  readonly outward: Point;
  readonly vertex: Point;
  readonly second: Point;
  readonly coordinateError: number;
}): BrokenReading {
  const { breakPoint, outward, vertex, second, coordinateError } = question;
  const end = (lostMm: number) => breakPoint.map((part, axis) => part + lostMm * outward[axis]!);
  const far = vertex.map((part, axis) => part + outward[axis]!);
  return {
    valueAt: (lostMm) => angleDegrees(end(lostMm), vertex, second),
    errorAt: (lostMm) => angleErrorDegrees(end(lostMm), vertex, second, coordinateError),
    atInfinity: angleDegrees(far, vertex, second),
  };
}
