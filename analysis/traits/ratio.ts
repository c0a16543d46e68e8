/** A length with its standard error, mm. */
export interface Reading {
  readonly mm: number;
  readonly error: number;
}

/** A ratio with its standard error, and the standard error of its natural log. */
export interface RatioValue {
  readonly value: number;
  readonly error: number;
  readonly logError: number;
}

/**
 * Part over whole, times 100 for a percentage, with errors to first order (the delta method); `correlation` is that of
 * the two errors, 0 if left out. Throws where the whole is 0.
 */
export function ratioOf(
  part: Reading,
  whole: Reading,
  options: { correlation?: number; times?: number } = {},
): RatioValue {
  const { correlation = 0, times = 1 } = options;
  if (whole.mm === 0) throw new Error('a ratio needs a whole that is not 0');
  const value = part.mm / whole.mm;
  const variance =
    part.error ** 2 - 2 * correlation * part.error * whole.error * value + (value * whole.error) ** 2;
  const error = Math.sqrt(Math.max(0, variance)) / Math.abs(whole.mm);
  return { value: value * times, error: error * times, logError: error / Math.abs(value) };
}
