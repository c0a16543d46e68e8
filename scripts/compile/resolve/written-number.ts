/** How many decimals an author wrote: 2 for `43.00`; none for whole numbers and for what was not written as plain digits. */
export function decimalsOf(written: string | undefined): number {
  return /^[+-]?\d*\.(\d+)$/.exec(written?.trim() ?? '')?.[1]?.length ?? 0;
}

/** A number with the decimals that the author gave it; more only where rounding would change it (up to four). */
export function withDecimals(value: number, decimals: number): string {
  for (let places = decimals; places < 4; places++) {
    if (Math.abs(Number(value.toFixed(places)) - value) < 1e-9) return value.toFixed(places);
  }
  return value.toFixed(Math.max(decimals, 4));
}
