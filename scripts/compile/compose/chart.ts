import type { CompiledLineage, CompiledTaxon } from '../contract.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import { chartCitation, chartUnits, chartVersion } from '../resolve/chart.ts';

/** The units of the chart that overlap the lineage, from the oldest fork or find to the youngest. */
export function composeChart(
  taxa: readonly CompiledTaxon[],
  trees: readonly DatedLineageTree[],
): CompiledLineage['chart'] {
  const ages = [
    ...taxa.flatMap(({ age }) => (age ? [age.from, age.to] : [])),
    ...trees.flatMap(({ dated }) => [...dated.ageMa]),
  ];
  const oldest = Math.max(0, ...ages);
  const youngest = Math.min(oldest, ...ages);
  const overlapping = chartUnits.filter((unit) => unit.fromMa > youngest && unit.toMa < oldest);
  return {
    version: chartVersion,
    citation: chartCitation,
    units: overlapping.map(({ id, rank, name, nameEs, fromMa, toMa }) => ({
      id,
      rank,
      name: { en: name, es: nameEs },
      from: fromMa,
      to: toMa,
    })),
  };
}
