import { uniformAge, type AgeBasis, type ResolvedAge } from '../resolve/ages.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Taxon } from '../schema/index.ts';

/** When a taxon lived, as its finds say: the horizons they come from, and the age from first to last find. */
export interface TaxonAges {
  horizons: string[];
  age: ResolvedAge | undefined;
}

/**
 * Ages of every taxon from the horizons of its specimens, else from its own record, else from the beds of the section
 * that it was sampled in; undefined where none says.
 */
export function taxonAges(lineage: ResolvedLineage): Map<string, TaxonAges> {
  const finds = Map.groupBy(lineage.specimens, (specimen) => specimen.record.value.taxon);
  return new Map(
    lineage.records.taxa.records.map(({ value }) => [
      value.id,
      agesOf(value, finds.get(value.id) ?? [], lineage),
    ]),
  );
}

function agesOf(taxon: Taxon, finds: readonly ResolvedSpecimen[], lineage: ResolvedLineage): TaxonAges {
  const horizons = [...new Set(finds.flatMap((find) => find.record.value.horizon ?? []))].filter((id) =>
    lineage.horizonAges.has(id),
  );
  const found = horizons.map((id) => lineage.horizonAges.get(id)!);
  const given = lineage.givenAges.get(taxon.id);
  const parts = found.length > 0 ? found : given ? [given] : bedsOfSection(taxon, lineage);
  if (parts.length === 0) return { horizons, age: taxon.living ? today : undefined };
  return { horizons, age: spanning(parts, taxon.living) };
}

/** Ages of the beds between which a taxon was sampled; none for one that no section follows. */
function bedsOfSection({ id }: Taxon, { section, horizonAges }: ResolvedLineage): ResolvedAge[] {
  if (section?.record.value.taxon !== id) return [];
  return section.levels.flatMap(({ horizon }) => (horizon && horizonAges.get(horizon)) || []);
}

const today = uniformAge(0, 0, 0, 'living');

const weakest: readonly AgeBasis[] = ['stage', 'bracketed', 'dated'];

function spanning(parts: readonly ResolvedAge[], living: boolean): ResolvedAge {
  const oldest = parts.reduce((end, part) => (part.from > end.from ? part : end));
  const youngest = parts.reduce((end, part) => (part.to < end.to ? part : end));
  const from = oldest.from;
  const to = living ? 0 : youngest.to;
  const basis = living ? 'living' : weakest.find((each) => parts.some((part) => part.basis === each))!;
  // Digits are those of the two beds at the ends: one in between may be dated to the last year.
  const decimals = living ? oldest.decimals : Math.max(oldest.decimals, youngest.decimals);
  return uniformAge(from, to, decimals, basis);
}
