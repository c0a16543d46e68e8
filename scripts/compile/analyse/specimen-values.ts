import { errorOfPlusMinus } from '../../../analysis/traits/index.ts';
import type { Reading } from '../resolve/measured.ts';
import type { SchemeIndex } from '../resolve/scheme-index.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Trait } from '../schema/index.ts';
import { measureFrom, usablePoints } from './landmark-lengths.ts';
import { errorOfValue, findValue, type TraitKind } from './trait-kind.ts';
import { excludedLandmarks, plusMinusOf } from './treatment.ts';

/** The value of one trait on one specimen, in the trait's unit, before anything is pooled. */
export interface SpecimenValue {
  specimen: ResolvedSpecimen;
  value: number;
  /** Repeats in the trait's unit (landmarks), or of each measurement (callipers): what measurement error is learnt from. */
  from: 'landmarks' | 'callipers' | 'literature';
  repeats: number[][];
  /** Mean of each measurement of the trait, in mm, degrees or as a count. */
  means: number[];
  /** Standard error that comes from an author's plus or minus (95%); 0 where the value is exact. */
  approximateError: number;
  approximate: boolean;
  mirrored: boolean;
}

/** Every source of a specimen that yields the trait: callipers or literature first when preferred, then landmarks. */
export function valuesOf(
  trait: Trait,
  kind: TraitKind,
  specimen: ResolvedSpecimen,
  scheme: SchemeIndex,
): SpecimenValue[] {
  const measured = fromReadings(trait, kind, specimen);
  const digitised = fromLandmarks(trait, kind, specimen, scheme);
  const both = [digitised, measured].filter((value) => value !== undefined);
  return measured && hasPreferred(kind, specimen) ? both.reverse() : both;
}

function hasPreferred(kind: TraitKind, specimen: ResolvedSpecimen): boolean {
  return kind.measurements.some((id) => specimen.readings.get(id)?.some((reading) => reading.preferred));
}

/** The reading to use of several: the preferred one, else the first that reaches the whole length. */
export function chosenReading(readings: readonly Reading[] | undefined): Reading | undefined {
  const whole = readings?.filter((reading) => reading.toBreak === undefined) ?? [];
  return whole.find((reading) => reading.preferred) ?? whole[0];
}

function fromReadings(trait: Trait, kind: TraitKind, specimen: ResolvedSpecimen): SpecimenValue | undefined {
  const readings = kind.measurements.map((id) => chosenReading(specimen.readings.get(id)));
  if (readings.some((reading) => reading === undefined)) return undefined;
  const known = readings as Reading[]; // none is undefined
  const means = known.map((reading) => mean(reading.values));
  const value = findValue(trait, kind, means);
  if (value === undefined) return undefined;
  const errors = known.map((reading) => errorOfPlusMinus(reading.approximate ?? 0));
  return {
    specimen,
    value,
    from: known.some((reading) => reading.from === 'literature') ? 'literature' : 'callipers',
    repeats: known.map((reading) => reading.values),
    means,
    approximateError: errorOfValue(trait, kind, means, errors),
    approximate: errors.some((error) => error > 0),
    mirrored: false,
  };
}

function fromLandmarks(
  trait: Trait,
  kind: TraitKind,
  specimen: ResolvedSpecimen,
  scheme: SchemeIndex,
): SpecimenValue | undefined {
  const excluded = excludedLandmarks(specimen.record.value);
  const read: { values: number[]; mirrored: boolean }[] = [];
  for (const digitising of specimen.digitisings) {
    for (const repeat of digitising.repeats) {
      const points = usablePoints(repeat, digitising.mmPerUnit, excluded);
      const values = kind.measurements
        .map((id) => scheme.measurements.get(id))
        .map((each) => each && measureFrom(each, points, scheme));
      if (values.every((value) => value !== undefined))
        read.push({ values: values as number[], mirrored: digitising.source.mirrored === true });
    }
  }
  const usable = read.flatMap((each) => {
    const value = findValue(trait, kind, each.values);
    return value === undefined ? [] : [{ ...each, value }];
  });
  if (usable.length === 0) return undefined;
  const means = kind.measurements.map((_, index) => mean(usable.map(({ values }) => values[index]!)));
  const repeats = usable.map(({ value }) => value);
  const errors = kind.measurements.map((id) =>
    errorOfPlusMinus(plusMinusOf(scheme.measurements.get(id)!, specimen.record.value, scheme)),
  );
  return {
    specimen,
    value: mean(repeats),
    from: 'landmarks',
    repeats: [repeats],
    means,
    approximateError: errorOfValue(trait, kind, means, errors),
    approximate: errors.some((error) => error > 0),
    mirrored: usable.some(({ mirrored }) => mirrored),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
