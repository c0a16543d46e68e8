import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { SpecimenLimit } from './limits.ts';
import type { ObservedTrait } from './observe-trait.ts';
import type { TaxonAges } from './taxon-ages.ts';

/** Stands for the bed of an animal of today, among ids of horizons. */
export const today = 'today:';

/** For each taxon the beds of the specimens that carry a trait, or that limit it where none does; none where nothing was found. */
export type CarrierBeds = ReadonlyMap<string, readonly string[]>;

/** Beds by which taxa are placed in time for a trait; without a trait every list is empty. */
export function carrierBeds(
  trait: { observed: ObservedTrait; limits: ReadonlyMap<string, readonly SpecimenLimit[]> } | undefined,
  records: LineageRecords,
): CarrierBeds {
  const beds = new Map<string, string[]>();
  for (const { value: taxon } of records.taxa.records) {
    const whole = trait?.observed.taxa.get(taxon.id)?.counted ?? [];
    const carriers = whole.length > 0 ? whole : (trait?.limits.get(taxon.id) ?? []);
    const own = carriers.flatMap(
      ({ specimen }) => specimen.record.value.horizon ?? (taxon.living ? today : []),
    );
    beds.set(taxon.id, own);
  }
  return beds;
}

/**
 * Age in Ma at which each taxon stands: the mean over its carriers of the middle of their beds, else the middle of the
 * taxon's own age. A taxon of which nothing says when it lived is left out.
 */
export function placeTaxa(
  beds: CarrierBeds,
  lineage: ResolvedLineage,
  ages: ReadonlyMap<string, TaxonAges>,
): Map<string, number> {
  const placed = new Map<string, number>();
  for (const { value: taxon } of lineage.records.taxa.records) {
    const own = (beds.get(taxon.id) ?? []).flatMap((bed) =>
      bed === today ? 0 : (lineage.horizonAges.get(bed)?.mean ?? []),
    );
    const at =
      own.length > 0
        ? own.reduce((sum, age) => sum + age, 0) / own.length
        : taxon.living
          ? 0
          : ages.get(taxon.id)?.age?.mean;
    if (at !== undefined) placed.set(taxon.id, at);
  }
  return placed;
}
