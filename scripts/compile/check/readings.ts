import { compareReadings, errorOfMean, findRepeatComponents } from '../../../analysis/traits/index.ts';
import { measureFrom, usablePoints } from '../analyse/landmark-lengths.ts';
import { excludedLandmarks } from '../analyse/treatment.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Reading } from '../resolve/measured.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';

/** Repeats further apart than this share of the largest reading of the specimen were not of the same thing. */
const repeatShare = 0.1;
/** Level at which callipers and landmarks are held against each other: one false alarm in a thousand pairs. */
const agreementLevel = 0.999;

/** Repeats agree, of several records one is preferred, and callipers agree with landmarks within their errors. */
export function checkReadings(lineage: ResolvedLineage, report: Report): void {
  const errors = new Map(
    [...lineage.scheme.measurements.keys()].map((id) => [id, readingErrorOf(id, lineage.specimens)]),
  );
  for (const specimen of lineage.specimens) {
    for (const [id, readings] of specimen.readings) {
      checkRepeats(id, readings, specimen, report);
      checkPreferred(id, readings, report);
      checkAgreement(id, specimen, lineage, errors, report);
    }
  }
}

function checkRepeats(
  id: string,
  readings: readonly Reading[],
  specimen: ResolvedSpecimen,
  report: Report,
): void {
  const all = [...specimen.readings.values()].flat();
  const largest = Math.max(...all.flatMap(({ values }) => values.map(Math.abs)));
  for (const { values, span } of readings) {
    const apart = Math.max(...values) - Math.min(...values);
    const scale = lineageScale(values, largest);
    if (values.length < 2 || apart <= repeatShare * scale) continue;
    report.add(
      'repeats-disagree',
      span,
      `the repeats of "${id}" are ${Number(apart.toPrecision(3))} apart`,
      'measure again; a slip of the pen or of the unit is the usual cause',
    );
  }
}

/** A length along an axis may be near zero, where its own size says nothing about its error. */
function lineageScale(values: readonly number[], largest: number): number {
  const own = Math.max(...values.map(Math.abs));
  return Math.max(own, largest / 2);
}

function checkPreferred(id: string, readings: readonly Reading[], report: Report): void {
  const whole = readings.filter(({ toBreak }) => toBreak === undefined);
  const preferred = whole.filter((reading) => reading.preferred);
  if (whole.length < 2 || preferred.length === 1) return;
  const place = (preferred[1] ?? whole[1])!.span;
  const message =
    preferred.length > 1
      ? `two records of "${id}" are preferred`
      : `"${id}" is recorded ${whole.length} times, and none is preferred`;
  report.add(
    'many-values',
    place,
    message,
    'keep them all with their sources, and write preferred: true on the one to use',
  );
}

function readingErrorOf(id: string, specimens: readonly ResolvedSpecimen[]): number | undefined {
  const within = findRepeatComponents(
    specimens.flatMap(({ readings }) => (readings.get(id) ?? []).map(({ values }) => values)),
  )?.within;
  return within === undefined ? undefined : Math.sqrt(within);
}

function checkAgreement(
  id: string,
  specimen: ResolvedSpecimen,
  lineage: ResolvedLineage,
  errors: ReadonlyMap<string, number | undefined>,
  report: Report,
): void {
  const measurement = lineage.scheme.measurements.get(id)!;
  const excluded = excludedLandmarks(specimen.record.value);
  const digitised = specimen.digitisings.flatMap(({ repeats, mmPerUnit }) =>
    repeats.flatMap(
      (repeat) => measureFrom(measurement, usablePoints(repeat, mmPerUnit, excluded), lineage.scheme) ?? [],
    ),
  );
  const reading = specimen.readings.get(id)!.find(({ toBreak }) => toBreak === undefined);
  if (!reading || digitised.length === 0) return;
  const one = meanWithError(reading.values, errors.get(id));
  const other = meanWithError(digitised, undefined);
  const { agree } = compareReadings(one, other, agreementLevel);
  if (agree) return;
  const message = `"${id}" is ${one.value.toFixed(2)} by callipers and ${other.value.toFixed(2)} from landmarks`;
  report.add(
    'readings-disagree',
    reading.span,
    message,
    'look at both again: the scale of the picture, a landmark or the callipers may be off',
  );
}

/**
 * Share of a length taken for the least error of one reading: parallax in a picture and a bone held askew are in no
 * repeat, so callipers and pictures differ by more than either repeats to.
 */
const assumedShare = 0.01;

function meanWithError(
  values: readonly number[],
  error: number | undefined,
): { value: number; error: number } {
  const value = values.reduce((sum, each) => sum + each, 0) / values.length;
  const single = Math.max(error ?? 0, assumedShare * Math.abs(value));
  return { value, error: errorOfMean({ reading: single ** 2 }, { readings: values.length }) };
}
