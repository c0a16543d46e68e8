/*
 * Dahlberg's error of the method for duplicate readings, √(Σd² / 2n): G. Dahlberg 1940, Statistical methods for medical and
 * biological students (the formula from memory; the lengths are made up, the sum is worked by hand).
 */
export const duplicates = {
  lengths: [
    [50, 51],
    [62, 60],
    [71, 71],
    [80, 83],
  ],
  /** Σd² = 1 + 4 + 0 + 9 = 14; √(14 / 8). */
  technical: Math.sqrt(14 / 8),
} as const;
