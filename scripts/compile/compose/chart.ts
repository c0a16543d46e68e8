import { chartCitation, chartUnits, chartVersion } from '../../../analysis/ages/index.ts';
import type { CompiledLineage, CompiledTaxon } from '../contract.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';

/** The units of the chart that overlap the lineage, from the oldest fork or find to the youngest. */
export function composeChart(
  taxa: readonly CompiledTaxon[],
  trees: readonly DatedLineageTree[],
): CompiledLineage['chart'] {
  const ages = [
    ...taxa.flatMap(({ age }) => (age ? [age.from, age.to] : [])),
    ...trees.flatMap(({ dated }) => [...dated.ageMa]),
  ];
  const oldest = ages.reduce((most, age) => Math.max(most, age), 0);
  const youngest = ages.reduce((least, age) => Math.min(least, age), oldest);
  const units = chartUnits.flatMap(({ id, rank, name, nameEs, fromMa, toMa }) => {
    if (!isDrawn(rank) || fromMa <= youngest || toMa >= oldest) return [];
    return [{ id, rank, name: { en: name, es: nameEs }, from: fromMa, to: toMa }];
  });
  return { version: chartVersion, citation: chartCitation, units };
}

type DrawnRank = CompiledLineage['chart']['units'][number]['rank'];

/** Eras and subperiods have no row of their own in a column beside a figure. */
function isDrawn(rank: string): rank is DrawnRank {
  return rank === 'period' || rank === 'epoch' || rank === 'stage';
}
