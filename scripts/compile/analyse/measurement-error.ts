import { errorOfMean, findRepeatComponents, type RepeatComponents } from '../../../analysis/traits/index.ts';
import type { Trait } from '../schema/index.ts';
import type { SpecimenValue } from './specimen-values.ts';
import { errorOfValue, type TraitKind } from './trait-kind.ts';

/**
 * Standard error of each specimen's value from its repeats, pooled over specimens that were read in the same way, with
 * the author's plus or minus on top. Null where nothing says. Landmarks pool on the trait, callipers on each measurement.
 */
export function readingErrors(
  trait: Trait,
  kind: TraitKind,
  values: readonly SpecimenValue[],
): Map<SpecimenValue, number | null> {
  const groups = Map.groupBy(values, (value) => value.from);
  const within = new Map([...groups].map(([from, group]) => [from, poolsOf(group)]));
  return new Map(values.map((value) => [value, errorOf(trait, kind, value, within.get(value.from)!)]));
}

/** What was read again in one way, and the components of its variance. */
export interface Repeats {
  from: SpecimenValue['from'];
  /** Left out where the trait itself was read again, from landmarks. */
  measurement: string | undefined;
  specimens: number;
  components: RepeatComponents;
}

/** Measurement error of a trait by how it was read; nothing where no specimen was read twice. */
export function repeatsOf({ measurements }: TraitKind, values: readonly SpecimenValue[]): Repeats[] {
  return [...Map.groupBy(values, (value) => value.from)].flatMap(([from, group]) =>
    columnsOf(group).flatMap((readings, column) => {
      const components = findRepeatComponents(readings);
      const specimens = readings.filter(({ length }) => length > 1).length;
      const measurement = from === 'landmarks' ? undefined : measurements[column];
      return components ? [{ from, measurement, specimens, components }] : [];
    }),
  );
}

/** Variance of one reading, for the trait (landmarks) or for each of its measurements (callipers). */
function poolsOf(group: readonly SpecimenValue[]): (number | undefined)[] {
  return columnsOf(group).map((readings) => findRepeatComponents(readings)?.within);
}

/** Readings of each specimen, of the trait (landmarks) or of each of its measurements (callipers). */
function columnsOf(group: readonly SpecimenValue[]): number[][][] {
  const columns = Math.max(...group.map((value) => value.repeats.length));
  return Array.from({ length: columns }, (_, column) => group.map((value) => value.repeats[column] ?? []));
}

function errorOf(
  trait: Trait,
  kind: TraitKind,
  value: SpecimenValue,
  within: readonly (number | undefined)[],
): number | null {
  const errors = value.repeats.map((repeats, column) => {
    const reading = within[column];
    return reading === undefined ? undefined : errorOfMean({ reading }, { readings: repeats.length });
  });
  if (errors.some((error) => error === undefined)) return value.approximate ? value.approximateError : null;
  const known = errors as number[]; // none is undefined
  const direct = value.from === 'landmarks' ? known[0]! : errorOfValue(trait, kind, value.means, known);
  return Math.hypot(direct, value.approximateError);
}
