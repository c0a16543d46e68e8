import { measureFrom, usablePoints } from '../analyse/landmark-lengths.ts';
import { excludedLandmarks } from '../analyse/treatment.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { quantityOf } from '../resolve/measured.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Span } from '../source/source-text.ts';

/** One length of one specimen, on log scale, and where it is written; for a picture that is its scale. */
export interface LogLength {
  specimen: string;
  taxon: string;
  measurement: string;
  log: number;
  span: Span;
  /** Path of the sheet when it comes from landmarks. */
  sheet: string | undefined;
}

/** Every whole length of every specimen, from callipers and from landmarks; those up to a break are left out. */
export function logLengths(lineage: ResolvedLineage): LogLength[] {
  return lineage.specimens.flatMap((specimen) => [
    ...fromReadings(specimen, lineage),
    ...fromLandmarks(specimen, lineage),
  ]);
}

function fromReadings({ record, readings }: ResolvedSpecimen, { scheme }: ResolvedLineage): LogLength[] {
  const { id: specimen, taxon } = record.value;
  return [...readings].flatMap(([measurement, own]) => {
    if (quantityOf(scheme.measurements.get(measurement)!) !== 'length') return [];
    return own.flatMap(({ values, span, toBreak }) => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return mean > 0 && toBreak === undefined
        ? [{ specimen, taxon, measurement, log: Math.log(mean), span, sheet: undefined }]
        : [];
    });
  });
}

function fromLandmarks({ record, digitisings }: ResolvedSpecimen, { scheme }: ResolvedLineage): LogLength[] {
  const { id: specimen, taxon } = record.value;
  const excluded = excludedLandmarks(record.value);
  const lengths = [...scheme.measurements.values()].filter((each) => quantityOf(each) === 'length');
  return digitisings.flatMap(({ repeats: [first], mmPerUnit, source, path }) => {
    if (!first) return [];
    const points = usablePoints(first, mmPerUnit, excluded);
    const span = record.at([...path, source.scale ? 'scale' : 'mmPerUnit']);
    return lengths.flatMap((measurement) => {
      const mm = measureFrom(measurement, points, scheme);
      return mm !== undefined && mm > 0
        ? [{ specimen, taxon, measurement: measurement.id, log: Math.log(mm), span, sheet: source.sheet }]
        : [];
    });
  });
}
