/** A dated bed of a section: height above its base, age and error (one standard deviation). */
export interface DatedBed {
  readonly heightM: number;
  readonly ageMa: number;
  readonly sigmaMa: number;
}

/** Age of a level of a section, and what it rests on. */
export interface LevelAge {
  readonly ageMa: number;
  readonly sigmaMa: number;
  /** Rate of accumulation between the beds on either side; NaN where there is but one bed. */
  readonly metresPerMyr: number;
  /** Share of each bed's date in this age, in the order the beds were given; they sum to 1. */
  readonly shares: readonly number[];
}

/**
 * Age of a level of a section by a straight line between the dated beds on either side, steady accumulation assumed;
 * its error is that of the two dates. Undefined outside the dated beds: a line is not drawn past its ends. Throws
 * where two beds share a height, or a higher one is older.
 */
export function interpolateAge(beds: readonly DatedBed[], heightM: number): LevelAge | undefined {
  const section = [...beds].sort((a, b) => a.heightM - b.heightM);
  requireOrder(section);
  const above = section.findIndex((bed) => bed.heightM >= heightM);
  if (above === -1 || (above === 0 && section[0]!.heightM !== heightM)) return undefined;
  const upper = section[Math.max(above, 1)];
  const lower = section[Math.max(above, 1) - 1]!;
  if (!upper) return { ageMa: lower.ageMa, sigmaMa: lower.sigmaMa, metresPerMyr: NaN, shares: [1] };
  const share = (heightM - lower.heightM) / (upper.heightM - lower.heightM);
  return {
    ageMa: (1 - share) * lower.ageMa + share * upper.ageMa,
    sigmaMa: Math.hypot((1 - share) * lower.sigmaMa, share * upper.sigmaMa),
    metresPerMyr: (upper.heightM - lower.heightM) / (lower.ageMa - upper.ageMa),
    shares: beds.map((bed) => (bed === lower ? 1 - share : bed === upper ? share : 0)),
  };
}

function requireOrder(section: readonly DatedBed[]): void {
  for (const [index, upper] of section.entries()) {
    const lower = section[index - 1];
    if (!lower) continue;
    if (lower.heightM === upper.heightM) throw new Error(`two dated beds at ${upper.heightM} m`);
    if (lower.ageMa < upper.ageMa)
      throw new Error(
        `the bed at ${upper.heightM} m is dated older than the one at ${lower.heightM} m below it`,
      );
  }
}

/** Time between two levels of one section, million years, with the error that the dates of its beds leave in it. */
export function intervalBetween(
  beds: readonly DatedBed[],
  lower: LevelAge,
  upper: LevelAge,
): { readonly myr: number; readonly sigmaMyr: number } {
  const parts = beds.map(({ sigmaMa }, bed) => (lower.shares[bed]! - upper.shares[bed]!) * sigmaMa);
  return { myr: lower.ageMa - upper.ageMa, sigmaMyr: Math.hypot(...parts) };
}
