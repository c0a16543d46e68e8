import {
  errorOnScale,
  findPooledSpread,
  isOnScale,
  taxonMean,
  toScale,
  type PooledSpread,
  type TaxonMean,
  type TraitScale,
} from '../../../analysis/traits/index.ts';
import { castOf } from '../check/record-ids.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Trait } from '../schema/index.ts';
import { findReasonOut, type LeftOutReason } from './eligibility.ts';
import { readingErrors } from './measurement-error.ts';
import { valuesOf, type SpecimenValue } from './specimen-values.ts';
import { scaleOf, type TraitKind } from './trait-kind.ts';

/** What was observed of one trait in one taxon. */
export interface TaxonObservation {
  counted: SpecimenValue[];
  leftOut: { specimen: ResolvedSpecimen; reason: LeftOutReason }[];
  mean: TaxonMean | undefined;
}

/** What was observed of one trait, taxon by taxon, before relatives are asked. */
export interface ObservedTrait {
  trait: Trait;
  kind: TraitKind;
  scale: TraitScale;
  /** Standard error of each reading in the trait's unit; null where nothing says. */
  errors: Map<SpecimenValue, number | null>;
  /** Every value of every specimen that yields one, whether or not it counts. */
  values: SpecimenValue[];
  spread: PooledSpread | undefined;
  taxa: Map<string, TaxonObservation>;
}

/** Collects the values of a trait, sorts out who counts, pools their spread and forms the means of taxa. */
export function observeTrait(trait: Trait, kind: TraitKind, lineage: ResolvedLineage): ObservedTrait {
  const scale = scaleOf(trait, kind);
  const values = lineage.specimens.flatMap(
    (specimen) => valuesOf(trait, kind, specimen, lineage.scheme)[0] ?? [],
  );
  const errors = readingErrors(trait, kind, values);
  const taxa = new Map<string, TaxonObservation>();
  for (const { value } of lineage.records.taxa.records)
    taxa.set(value.id, { counted: [], leftOut: [], mean: undefined });
  for (const value of values) sortIn(value, trait, scale, taxa);
  for (const taxon of taxa.values()) leaveOutCopies(taxon);
  const spread = findPooledSpread([...taxa.values()].flatMap(({ counted }) => spreadGroups(counted, scale)));
  for (const taxon of taxa.values()) {
    if (taxon.counted.length === 0) continue;
    const scaled = taxon.counted.map((value) => ({
      value: toScale(scale, value.value),
      error: ownError(value, spread, errors, scale),
    }));
    taxon.mean = taxonMean(scaled, spread);
  }
  return { trait, kind, scale, errors, values, spread, taxa };
}

function sortIn(
  value: SpecimenValue,
  trait: Trait,
  scale: TraitScale,
  taxa: ReadonlyMap<string, TaxonObservation>,
): void {
  const specimen = value.specimen.record.value;
  const taxon = taxa.get(specimen.taxon);
  if (!taxon || !isOnScale(scale, value.value)) return;
  const reason = findReasonOut(specimen, trait);
  if (reason) taxon.leftOut.push({ specimen: value.specimen, reason });
  else taxon.counted.push(value);
}

/** A cast and its original are one animal: the original counts, or the first of its casts where the original yields nothing. */
function leaveOutCopies(taxon: TaxonObservation): void {
  const counted = new Set(
    taxon.counted
      .map(({ specimen }) => specimen.record.value)
      .flatMap((value) => (castOf(value) === undefined ? value.id : [])),
  );
  taxon.counted = taxon.counted.filter(({ specimen }) => {
    const original = castOf(specimen.record.value);
    if (original === undefined) return true;
    const again = counted.has(original);
    counted.add(original);
    if (again) taxon.leftOut.push({ specimen, reason: 'same-animal' });
    return !again;
  });
}

/**
 * The values of a taxon that tell of its spread, on the scale of the model: none that is approximate, and by sex where
 * there are three or more of each.
 */
export function spreadGroups(counted: readonly SpecimenValue[], scale: TraitScale): number[][] {
  const sure = counted.filter((value) => !value.approximate);
  const bySex = Map.groupBy(sure, ({ specimen }) => specimen.record.value.sex);
  const enough = (sex: 'female' | 'male') => (bySex.get(sex)?.length ?? 0) >= 3;
  const groups = enough('female') && enough('male') ? [...bySex.values()] : [sure];
  return groups.map((group) => group.map((value) => toScale(scale, value.value)));
}

/** The spread among specimens holds the repeats' error already: only a stated error comes on top, or both where there is no spread. */
function ownError(
  value: SpecimenValue,
  spread: PooledSpread | undefined,
  errors: ReadonlyMap<SpecimenValue, number | null>,
  scale: TraitScale,
): number {
  const error = spread ? value.approximateError : (errors.get(value) ?? 0);
  return errorOnScale(scale, value.value, error);
}
