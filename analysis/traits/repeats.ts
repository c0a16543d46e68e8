/** Analysis of variance of repeated readings of several specimens. */
export interface RepeatComponents {
  /** Mean square within specimens: the variance of one reading. */
  readonly within: number;
  readonly withinDf: number;
  /** Mean square among specimens. */
  readonly among: number;
  readonly amongDf: number;
  /** Variance component among specimens, 0 where the estimate is negative. */
  readonly amongComponent: number;
  /** Share of the variance of a reading that lies among specimens, 0 to 1; NaN where nothing varies. */
  readonly repeatability: number;
  /** The rest, in percent. */
  readonly percentError: number;
}

/**
 * Measurement error from repeats: one-way analysis of variance, specimens unequally often measured allowed (Sokal and
 * Rohlf 1995, Biometry, box 9.2; percent error after Bailey and Byrnes 1990, Systematic Zoology 39: 124–130). Undefined
 * without a specimen that was measured twice; the among part is NaN for a single specimen.
 */
export function findRepeatComponents(
  specimens: readonly (readonly number[])[],
): RepeatComponents | undefined {
  const groups = specimens.filter((readings) => readings.length > 0);
  const total = groups.reduce((sum, readings) => sum + readings.length, 0);
  const withinDf = total - groups.length;
  if (withinDf < 1) return undefined;
  const means = groups.map(meanOf);
  const grand = groups.reduce((sum, readings, index) => sum + readings.length * means[index]!, 0) / total;
  const within =
    groups.reduce((sum, readings, index) => sum + squaresAround(readings, means[index]!), 0) / withinDf;
  const amongDf = groups.length - 1;
  const among =
    groups.reduce((sum, readings, k) => sum + readings.length * (means[k]! - grand) ** 2, 0) / amongDf;
  const typicalCount =
    (total - groups.reduce((sum, readings) => sum + readings.length ** 2, 0) / total) / amongDf;
  const amongComponent = Math.max(0, (among - within) / typicalCount);
  const repeatability = amongComponent / (amongComponent + within);
  return {
    within,
    withinDf,
    among,
    amongDf,
    amongComponent,
    repeatability,
    percentError: 100 * (1 - repeatability),
  };
}

/** Variance components of readings within settings (a session, an observer) within specimens. */
export interface NestedComponents {
  readonly reading: number;
  readonly setting: number;
  readonly specimen: number;
  readonly readingDf: number;
  readonly settingDf: number;
  readonly specimenDf: number;
}

/**
 * Nested analysis of variance with unequal numbers allowed, negative components set to 0 (Sokal and Rohlf 1995,
 * Biometry, box 10.6). Undefined without a repeated reading and a specimen in two settings.
 */
export function findNestedComponents(
  specimens: readonly (readonly (readonly number[])[])[],
): NestedComponents | undefined {
  const settings = specimens.flat();
  const readings = settings.flat();
  const readingDf = readings.length - settings.length;
  const settingDf = settings.length - specimens.length;
  const specimenDf = specimens.length - 1;
  if (readingDf < 1 || settingDf < 1 || specimenDf < 1) return undefined;
  const sizes = specimens.map((group) => group.flat().length);
  const reading = settings.reduce((sum, group) => sum + squaresAround(group, meanOf(group)), 0) / readingDf;
  const settingSquare =
    specimens.reduce((sum, group) => {
      const mean = meanOf(group.flat());
      return sum + group.reduce((inner, one) => inner + one.length * (meanOf(one) - mean) ** 2, 0);
    }, 0) / settingDf;
  const grand = meanOf(readings);
  const specimenSquare =
    specimens.reduce((sum, group, k) => sum + sizes[k]! * (meanOf(group.flat()) - grand) ** 2, 0) /
    specimenDf;
  const perSpecimen = specimens.map(
    (group, k) => group.reduce((sum, one) => sum + one.length ** 2, 0) / sizes[k]!,
  );
  const allSquares = settings.reduce((sum, group) => sum + group.length ** 2, 0) / readings.length;
  const sumPerSpecimen = perSpecimen.reduce((sum, one) => sum + one, 0);
  const inSetting = (readings.length - sumPerSpecimen) / settingDf;
  const inSpecimen = (sumPerSpecimen - allSquares) / specimenDf;
  const spread =
    (readings.length - sizes.reduce((sum, size) => sum + size ** 2, 0) / readings.length) / specimenDf;
  const setting = Math.max(0, (settingSquare - reading) / inSetting);
  const specimen = Math.max(0, (specimenSquare - reading - inSpecimen * setting) / spread);
  return { reading, setting, specimen, readingDf, settingDf, specimenDf };
}

/** Standard error of the mean of so many readings, taken in so many settings. */
export function errorOfMean(
  components: { readonly reading: number; readonly setting?: number },
  counts: { readonly readings: number; readonly settings?: number },
): number {
  return Math.sqrt(components.reading / counts.readings + (components.setting ?? 0) / (counts.settings ?? 1));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function squaresAround(values: readonly number[], centre: number): number {
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
}
