import type { Report } from '../findings/report.ts';
import type { Measurement, MeasuredRecord, Specimen } from '../schema/index.ts';
import type { Span } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';
import { quantityOf, type Reading } from './measured.ts';
import { millimetresIn, unitFits } from './units.ts';

/** The measurements written in a specimen's own record, by measurement; mistakes in them go to the report. */
export function authoredReadings(
  specimen: Located<Specimen>,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): Map<string, Reading[]> {
  const readings = new Map<string, Reading[]>();
  for (const [id, written] of Object.entries(specimen.value.measurements)) {
    const measurement = measurements.get(id);
    if (!measurement) continue;
    const records = Array.isArray(written) ? written : [written];
    const read = records.flatMap((record, index) => {
      const path = Array.isArray(written) ? ['measurements', id, index] : ['measurements', id];
      return readRecord(record, path, measurement, specimen, report) ?? [];
    });
    if (read.length > 0) readings.set(id, read);
  }
  return readings;
}

function readRecord(
  record: MeasuredRecord,
  path: PropertyKey[],
  measurement: Measurement,
  specimen: Located<Specimen>,
  report: Report,
): Reading | undefined {
  const span = specimen.at(path);
  const quantity = quantityOf(measurement);
  if (!unitFits(record.unit, quantity)) {
    report.add(
      'unit-mismatch',
      specimen.at([...path, 'unit']),
      `"${measurement.id}" is ${quantityWords[quantity]}, and ${record.unit} cannot say it`,
      `give it in ${quantityUnits[quantity]}`,
    );
    return undefined;
  }
  const values = valuesOf(record, path, specimen, report);
  if (!values) return undefined;
  const positive = quantity === 'length' && measurement.along === undefined;
  if (values.some((value) => !isAllowed(value, positive))) {
    report.add(
      'not-a-length',
      span,
      `"${measurement.id}" is ${values.join(', ')}; a length is more than zero`,
      'measure again, or leave it out',
    );
    return undefined;
  }
  const factor = millimetresIn(record.unit) ?? 1;
  return {
    values: values.map((value) => value * factor),
    approximate: record.approximate === undefined ? undefined : record.approximate * factor,
    toBreak: record.toBreak,
    from: record.source === undefined ? 'callipers' : 'literature',
    preferred: record.preferred === true,
    span,
  };
}

/** Lengths are finite and more than zero; angles, counts and distances along an axis need only be finite. */
export function isAllowed(value: number, positive: boolean): boolean {
  return Number.isFinite(value) && (!positive || value > 0);
}

function valuesOf(
  record: MeasuredRecord,
  path: PropertyKey[],
  specimen: Located<Specimen>,
  report: Report,
): number[] | undefined {
  const { value, repeats } = record;
  const span: Span = specimen.at(path);
  if (value !== undefined && repeats !== undefined) {
    report.add(
      'many-values',
      span,
      'both a value and repeats are given',
      'keep the repeats: their mean is used',
    );
    return undefined;
  }
  if (value === undefined && repeats === undefined) {
    report.add('no-value', span, 'neither a value nor repeats are given', 'give value: or repeats:');
    return undefined;
  }
  if (repeats === undefined && record.repeatOf !== undefined)
    report.add(
      'no-value',
      specimen.at([...path, 'repeatOf']),
      'repeatOf says what changed between repeats, and there is one value',
      'give repeats: [ … ], or remove repeatOf',
    );
  return repeats ?? [value!];
}

/** What a quantity is called in a sentence. */
export const quantityWords = { length: 'a length', angle: 'an angle', count: 'a count' } as const;

/** Units that can express a quantity, for advice. */
export const quantityUnits = { length: 'mm, cm, m or in', angle: 'degrees', count: 'count' } as const;
