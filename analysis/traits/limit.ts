import { inverseNormal } from '../statistics/index.ts';
import type { BrokenReading } from './broken-reading.ts';

/** What one broken specimen says of its own value, in the trait's unit. */
export type BrokenLimit =
  | {
      readonly found: true;
      /** Safe end of the level's interval, rounded outward: the specimen's value is no less. */
      readonly atLeast?: number;
      /** The same the other way. */
      readonly atMost?: number;
      /** Value that is reached only if the lost part had no end; nothing to print. */
      readonly asymptote?: number;
      /** The limits before measurement error and rounding, and the standard error of each: what estimates use. */
      readonly bare: { readonly atLeast?: number; readonly atMost?: number; readonly error: number };
    }
  | { readonly found: false; readonly reason: 'not-monotone' | 'senses-differ' | 'no-reading' };

/** Steps at which a reading is tried for turning back. */
const trialSteps = 200;

/**
 * Limit from a broken specimen whose lost part is 0 mm or more long, at most `atMostMm` if that is known. Every
 * reading (a point of the break, a direction of the axis) must rise, or every one fall: the weakest counts. Refused
 * where one turns back, or one rises and another falls.
 */
export function limitOfBroken(
  readings: readonly BrokenReading[],
  options: { atMostMm?: number | undefined; level?: number; step?: number | undefined } = {},
): BrokenLimit {
  const { atMostMm, level = 0.95, step } = options;
  if (readings.length === 0) return { found: false, reason: 'no-reading' };
  const senses = readings.map((reading) => senseOf(reading, atMostMm));
  if (senses.includes(undefined)) return { found: false, reason: 'not-monotone' };
  const moving = senses.filter((sense) => sense !== 0);
  if (moving.some((sense) => sense !== moving[0])) return { found: false, reason: 'senses-differ' };
  const rising = (moving[0] ?? 1) > 0;
  const safe = inverseNormal((1 + level) / 2);
  const near = weakest(readings, 0, rising, safe);
  const far = atMostMm === undefined ? undefined : weakest(readings, atMostMm, !rising, safe);
  const error = Math.max(near.error, far?.error ?? 0);
  const [low, high] = rising ? [near, far] : [far, near];
  return {
    found: true,
    ...(low ? { atLeast: roundOutward(low.safe, 'down', step ?? stepFor(error)) } : {}),
    ...(high ? { atMost: roundOutward(high.safe, 'up', step ?? stepFor(error)) } : {}),
    ...(far ? {} : asymptoteOf(readings, rising)),
    bare: { ...(low ? { atLeast: low.bare } : {}), ...(high ? { atMost: high.bare } : {}), error },
  };
}

/** 1 if a reading never falls as more is restored, −1 if it never rises, 0 if it stays; undefined if it turns back. */
function senseOf({ valueAt, atInfinity }: BrokenReading, atMostMm: number | undefined): number | undefined {
  let [rises, falls] = [false, false];
  let last = valueAt(0);
  const meet = (value: number) => {
    const slack = 1e-12 * (Math.abs(value) + Math.abs(last));
    if (value > last + slack) rises = true;
    if (value < last - slack) falls = true;
    last = value;
  };
  for (let k = 1; k < trialSteps; k++) {
    const share = k / trialSteps;
    // without a known end the steps stretch from micrometres to kilometres
    meet(valueAt(atMostMm === undefined ? 10 ** (9 * share - 3) : atMostMm * share));
  }
  if (atMostMm !== undefined) meet(valueAt(atMostMm));
  else if (atInfinity !== undefined) meet(atInfinity);
  if (rises && falls) return undefined;
  return Number(rises) - Number(falls);
}

/** The reading that promises least at one end: lowest for a floor, highest for a ceiling, error included. */
function weakest(readings: readonly BrokenReading[], lostMm: number, floor: boolean, safe: number) {
  const ends = readings.map((reading) => {
    const [bare, error] = [reading.valueAt(lostMm), reading.errorAt(lostMm)];
    return { bare, error, safe: floor ? bare - safe * error : bare + safe * error };
  });
  return ends.reduce((least, end) => ((floor ? end.safe < least.safe : end.safe > least.safe) ? end : least));
}

function asymptoteOf(readings: readonly BrokenReading[], rising: boolean): { asymptote?: number } {
  const ends = readings.flatMap(({ atInfinity }) => (atInfinity === undefined ? [] : [atInfinity]));
  if (ends.length < readings.length) return {};
  return { asymptote: rising ? Math.max(...ends) : Math.min(...ends) };
}

/** Step in which a value with such an error is printed: the power of ten at or below the error; 0 for no rounding. */
export function stepFor(error: number): number {
  return error > 0 ? 10 ** Math.floor(Math.log10(error) + 1e-12) : 0;
}

/** Value rounded to a multiple of a step, never inward; unchanged for a step of 0. */
export function roundOutward(value: number, towards: 'down' | 'up', step: number): number {
  if (!(step > 0)) return value;
  const steps = value / step;
  // a value that is a multiple already, but for the last bits, stays
  const near = Math.round(steps);
  const whole =
    Math.abs(steps - near) < 1e-9 ? near : towards === 'down' ? Math.floor(steps) : Math.ceil(steps);
  return step < 1 ? whole / Math.round(1 / step) : whole * step;
}

/** Rows that show the working: what the specimen would read with nothing, some, more and most of the lost part restored. */
export function workingRows(reading: BrokenReading, mostMm: number): { lostMm: number; value: number }[] {
  return [0, 0.25, 0.5, 1].map((share) => ({
    lostMm: share * mostMm,
    value: reading.valueAt(share * mostMm),
  }));
}
