import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Trait } from '../schema/index.ts';
import { findReasonOut, type LeftOutReason } from './eligibility.ts';
import { readingErrors } from './measurement-error.ts';
import { sdToScale, toScale, type Scale } from './scale.ts';
import { valuesOf, type SpecimenValue } from './specimen-values.ts';
import { poolSpread, taxonMean, type PooledSpread, type ScaledValue, type TaxonMean } from './spread.ts';
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
  scale: Scale;
  /** Every value of every specimen that yields one, with the standard error of its reading, in the trait's unit. */
  errors: Map<SpecimenValue, number | null>;
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
  for (const taxon of lineage.records.taxa.records)
    taxa.set(taxon.value.id, { counted: [], leftOut: [], mean: undefined });
  for (const value of values) sortIn(value, trait, scale, taxa);
  for (const taxon of taxa.values()) leaveOutCopies(taxon);
  const scaled = new Map(
    [...taxa].map(([id, taxon]) => [id, taxon.counted.map((value) => scaledValue(value, scale))]),
  );
  const spread = poolSpread([...scaled.values()]);
  for (const [id, taxon] of taxa) {
    if (taxon.counted.length > 0) taxon.mean = taxonMean(scaled.get(id)!, spread);
  }
  return { trait, kind, scale, errors, values, spread, taxa };
}

function sortIn(
  value: SpecimenValue,
  trait: Trait,
  scale: Scale,
  taxa: ReadonlyMap<string, TaxonObservation>,
): void {
  const specimen = value.specimen.record.value;
  const taxon = taxa.get(specimen.taxon);
  if (!taxon || Number.isNaN(toScale(value.value, scale))) return;
  const reason = findReasonOut(specimen, trait);
  if (reason) taxon.leftOut.push({ specimen: value.specimen, reason });
  else taxon.counted.push(value);
}

/** A cast and its original are one animal: the original counts, or the first of its casts where the original yields nothing. */
function leaveOutCopies(taxon: TaxonObservation): void {
  const seen = new Set<string>();
  const originals = taxon.counted
    .filter((value) => originalOf(value) === undefined)
    .map((value) => value.specimen.record.value.id);
  const copies = new Set(originals);
  taxon.counted = taxon.counted.filter((value) => {
    const original = originalOf(value);
    if (original === undefined) return true;
    const again = copies.has(original) || seen.has(original);
    seen.add(original);
    if (again) taxon.leftOut.push({ specimen: value.specimen, reason: 'same-animal' });
    return !again;
  });
}

function originalOf(value: SpecimenValue): string | undefined {
  return /^cast of: (\S+)$/.exec(value.specimen.record.value.preparations)?.[1];
}

function scaledValue(value: SpecimenValue, scale: Scale): ScaledValue {
  const extra = value.approximate ? sdToScale(value.approximateSd, value.value, scale) ** 2 : 0;
  return { value: toScale(value.value, scale), extraVariance: extra, sex: value.specimen.record.value.sex };
}
