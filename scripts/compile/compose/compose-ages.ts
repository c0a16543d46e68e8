import { findLastOccurrenceLimit, orderOfBeds } from '../../../analysis/ages/index.ts';
import { distributionOf } from '../analyse/age-draws.ts';
import type { AnalysedLineage } from '../analyse/lineage.ts';
import type { CompiledLineage, CompiledTaxon } from '../contract.ts';
import type { ResolvedAge } from '../resolve/ages.ts';
import type { Taxon } from '../schema/index.ts';

const level = 0.95;

/** How long an extinct taxon may have lived past its last find; nothing for a living one, or one of a single bed. */
export function lastLimitOf(
  taxon: Taxon,
  horizons: readonly string[],
  age: ResolvedAge | undefined,
): Pick<CompiledTaxon['finds'], 'lastLimit'> {
  if (taxon.living || !age) return {};
  const finds = { firstMa: age.from, lastMa: age.to, horizons: horizons.length };
  const limit = findLastOccurrenceLimit(finds, level);
  return limit ? { lastLimit: { youngestMa: limit.youngestMa, level } } : {};
}

/** Each bed with the next younger by the middle of its age: linear in beds, where all pairs would be their square. */
export function composeBedOrder({ lineage }: AnalysedLineage): CompiledLineage['bedOrder'] {
  const { records, horizonAges } = lineage;
  const below = new Map(records.horizons.records.map(({ value }) => [value.id, value.above ?? []]));
  const beds = [...horizonAges].sort(([, a], [, b]) => b.mean - a.mean);
  return beds.slice(1).map(([younger, age], index) => {
    const [older, olderAge] = beds[index]!;
    const order = orderOfBeds(
      { id: older, age: distributionOf(olderAge) },
      { id: younger, age: distributionOf(age) },
      below,
    );
    return { older, younger, ...chanceOf(order) };
  });
}

/** Two beds of the list are never one bed, so what is known is that one of them is the older. */
function chanceOf(order: ReturnType<typeof orderOfBeds>): { known: boolean; probability: number } {
  return order.known === 'no'
    ? { known: false, probability: order.probabilityOlder }
    : { known: true, probability: order.known === 'older' ? 1 : 0 };
}
