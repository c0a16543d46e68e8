import { decimalsOfError, rounded, roundedDown, roundedUp } from './rounding.ts';
import { statement, type Statement } from './statement.ts';

/** What was read again in one way, as variance components; a share that one specimen alone cannot tell is null. */
export interface SaidRepeats {
  readonly from: 'landmarks' | 'callipers' | 'literature';
  readonly specimens: number;
  /** Variance of one reading, in squared units of what was read. */
  readonly within: number;
  readonly repeatability: number | null;
  readonly percentError: number | null;
}

/** Decimals of the shares of variance. */
const percentDecimals = 2;
const repeatabilityDecimals = 3;

/**
 * The technical error of one reading, the square root of its variance, to two figures in the unit that was read, and where
 * several specimens tell it how much of the variance of readings is error: at most so much, and at least so repeatable.
 */
export function repeatsStatement(repeats: SaidRepeats, unit: string): Statement {
  const { from, specimens, within, repeatability, percentError } = repeats;
  const error = Math.sqrt(within);
  const decimals = decimalsOfError(error) + 1;
  const read = { specimens, error: rounded(error, decimals), unit, decimals };
  if (repeatability === null || percentError === null) return statement(`repeats.${from}.error`, read);
  return statement(`repeats.${from}`, {
    ...read,
    percent: roundedUp(percentError, percentDecimals),
    percentDecimals,
    repeatability: roundedDown(repeatability, repeatabilityDecimals),
    repeatabilityDecimals,
  });
}
