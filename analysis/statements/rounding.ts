/** Ends of an interval; null where it is open. */
export type OpenInterval = readonly [number | null, number | null];

/** Half the width of an interval, or undefined where it has an open end. */
export function halfWidthOf([low, high]: OpenInterval): number | undefined {
  return low === null || high === null ? undefined : (high - low) / 2;
}

/**
 * Decimals that an error supports: the place to which it rounds as one digit, so that half a unit and more is written in
 * whole units; three at most, none without an error.
 */
export function decimalsOfError(error: number | undefined): number {
  if (error === undefined || !(error > 0)) return 0;
  return Math.min(3, Math.max(0, -Math.floor(Math.log10(error * 2))));
}

/** A number at so many decimals, halves away from zero. */
export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** The same, never upward; a value that is there already but for its last bits stays. */
export function roundedDown(value: number, decimals: number): number {
  return Math.floor(value * 10 ** decimals + 1e-9) / 10 ** decimals + 0;
}

/** The same, never downward. */
export function roundedUp(value: number, decimals: number): number {
  return Math.ceil(value * 10 ** decimals - 1e-9) / 10 ** decimals + 0;
}
