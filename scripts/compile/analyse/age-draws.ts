import { ageDrawer, type HorizonAge } from '../../../analysis/ages/index.ts';
import type { ResolvedAge } from '../resolve/ages.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { TaxonAges } from './taxon-ages.ts';

/** Sampled ages of all beds: each numbered draw is made once, and every trait takes its tips from it. */
export interface AgeDraws {
  /** Age in Ma of each bed in a draw, and of taxa by `ownBed`. */
  of(draw: number): ReadonlyMap<string, number>;
  /** What the draws follow from, to tell one set from another. */
  key: unknown;
}

/** Draws of all beds by seed; taxa of one bed move together, and superposition is honoured. */
export function ageDraws(
  { records, horizonAges }: ResolvedLineage,
  ages: ReadonlyMap<string, TaxonAges>,
  seed: number,
): AgeDraws {
  const beds = new Map([...horizonAges].map(([id, age]) => [id, distributionOf(age)]));
  const living: string[] = [];
  for (const { value } of records.taxa.records) {
    const age = ages.get(value.id)?.age;
    if (age) beds.set(ownBed(value.id), distributionOf(age));
    if (value.living) living.push(value.id);
  }
  const below = new Map(records.horizons.records.map(({ value }) => [value.id, value.above ?? []]));
  const known = new Map<number, ReadonlyMap<string, number>>();
  // made at the first draw: a check draws nothing
  let drawer: ReturnType<typeof ageDrawer> | undefined;
  return {
    of(draw) {
      drawer ??= ageDrawer({ beds, below }, seed);
      const drawn = known.get(draw) ?? drawer(draw);
      known.set(draw, drawn);
      return drawn;
    },
    key: [[...beds], [...below], living, seed],
  };
}

/** A taxon whose finds are in no bed of their own is drawn from its own age. Ids hold no colon, so no bed can be meant. */
export function ownBed(taxon: string): string {
  return `taxon:${taxon}`;
}

/** A resolved age as the engine draws it. */
export function distributionOf(age: ResolvedAge): HorizonAge {
  if (age.kind === 'normal') return { kind: 'normal', meanMa: age.mean, sigmaMa: age.sd };
  return { kind: 'uniform', fromMa: age.from, toMa: age.to };
}
