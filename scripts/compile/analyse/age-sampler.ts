import type { TipAges } from '../../../analysis/tree/index.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Taxon } from '../schema/index.ts';
import { ownBed, type AgeDraws } from './age-draws.ts';
import { today, type CarrierBeds } from './placement.ts';

/** Ages of the tips of a trait by numbered draw, 0 the reference. */
export interface AgeSampler {
  ofDraw(draw: number): TipAges;
  /** What the ages follow from, to tell one set from another. */
  key: unknown;
}

/**
 * A sampler for the tips of one trait, from the beds that carry it: every draw is worked out once, for its spans and its
 * trends alike.
 */
export function ageSampler(
  { records }: ResolvedLineage,
  carriers: CarrierBeds,
  reference: TipAges,
  drawn: AgeDraws,
): AgeSampler {
  const taxa = records.taxa.records.map(({ value }) => value);
  const known: TipAges[] = [reference];
  return {
    ofDraw: (draw) => (known[draw] ??= sampledAges(taxa, carriers, drawn.of(draw))),
    key: [[...carriers], [...reference], drawn.key],
  };
}

function sampledAges(
  taxa: readonly Taxon[],
  carriers: CarrierBeds,
  drawn: ReadonlyMap<string, number>,
): TipAges {
  const ages = new Map<string, number>();
  for (const taxon of taxa) {
    const age = findSampledAge(taxon, carriers.get(taxon.id) ?? [], drawn);
    if (age !== undefined) ages.set(taxon.id, age);
  }
  return ages;
}

/** Mean age of the beds, else the age of today, else that of the taxon's own bed. */
function findSampledAge(
  taxon: Taxon,
  beds: readonly string[],
  drawn: ReadonlyMap<string, number>,
): number | undefined {
  let sum = 0;
  let count = 0;
  for (const bed of beds) {
    const age = bed === today ? 0 : drawn.get(bed);
    if (age === undefined) continue;
    sum += age;
    count++;
  }
  if (count > 0) return sum / count;
  return taxon.living ? 0 : drawn.get(ownBed(taxon.id));
}
