import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { toCsv } from './csv.ts';

const header = [
  'lineage',
  'invented',
  'taxon',
  'scientificName',
  'living',
  'trait',
  'unit',
  'status',
  'estimate',
  'intervalLow',
  'intervalHigh',
  'atLeast',
  'atMost',
  'level',
  'method',
  'specimens',
  'firstFindMa',
  'lastFindMa',
  'placedMa',
  'contentDigest',
  'resultDigest',
];

/** Every value of every trait, one a row. An inferred or bounded row never stands without its status beside it. */
export function valuesCsv(lineage: CompiledLineage): string {
  const taxa = new Map(lineage.taxa.map((taxon) => [taxon.id, taxon]));
  const rows = lineage.traits.flatMap((trait) =>
    trait.values.map((value) => {
      const taxon = taxa.get(value.taxon)!;
      return [
        lineage.lineage,
        lineage.about.invented,
        taxon.id,
        taxon.name,
        taxon.living,
        trait.id,
        trait.unit,
        value.status,
        value.estimate,
        value.interval[0],
        value.interval[1],
        value.limits?.atLeast,
        value.limits?.atMost,
        value.level,
        value.method,
        value.n,
        taxon.finds.first,
        taxon.finds.last,
        value.placedMa,
        lineage.contentDigest,
        lineage.resultDigest,
      ];
    }),
  );
  return toCsv(header, rows);
}
