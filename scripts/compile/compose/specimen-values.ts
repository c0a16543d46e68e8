import type { AnalysedLineage } from '../analyse/lineage.ts';
import type { ObservedTrait } from '../analyse/observe-trait.ts';
import type { SpecimenValue } from '../analyse/specimen-values.ts';
import type { CompiledSpecimen } from '../contract.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';

type PrintedValue = CompiledSpecimen['values'][number];

/** For each specimen its value of every trait that it yields, whether or not it counts, with part and whole in mm. */
export function specimenValues(analysed: AnalysedLineage): Map<ResolvedSpecimen, PrintedValue[]> {
  const printed = new Map<ResolvedSpecimen, PrintedValue[]>();
  for (const { observed } of analysed.traits) {
    for (const value of observed.values) {
      const own = printed.get(value.specimen) ?? [];
      own.push(printValue(observed, value));
      printed.set(value.specimen, own);
    }
  }
  return printed;
}

function printValue({ trait, kind, errors }: ObservedTrait, value: SpecimenValue): PrintedValue {
  return {
    trait: trait.id,
    value: value.value,
    standardError: errors.get(value) ?? null,
    readings: Math.min(...value.repeats.map((repeats) => repeats.length)),
    ...(kind.kind === 'ratio'
      ? {
          part: { measurement: kind.measurements[0], mm: value.means[0]! },
          whole: { measurement: kind.measurements[1], mm: value.means[1]! },
        }
      : {}),
    approximate: value.approximate,
  };
}
