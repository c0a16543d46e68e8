import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { toCsv } from './csv.ts';

const header = [
  'lineage',
  'invented',
  'specimen',
  'label',
  'taxon',
  'kind',
  'typeStatus',
  'horizon',
  'oldestMa',
  'youngestMa',
  'lifeStage',
  'mirrored',
  'trait',
  'value',
  'standardError',
  'readings',
  'approximate',
  'counted',
  'leftOutBecause',
];

/** Every reading of every specimen, one a row; a specimen without a reading has one row. No locality is in it. */
export function specimensCsv(lineage: CompiledLineage): string {
  const reasons = new Map<string, string>(
    lineage.traits.flatMap((trait) =>
      trait.values.flatMap((value) =>
        value.leftOut.map(({ specimen, reason }) => [`${trait.id} ${specimen}`, reason] as const),
      ),
    ),
  );
  const counted = new Set(
    lineage.traits.flatMap((trait) =>
      trait.values.flatMap((value) => value.specimens.map((specimen) => `${trait.id} ${specimen}`)),
    ),
  );
  const rows = lineage.specimens.flatMap((specimen) => {
    const facts = [
      lineage.lineage,
      lineage.about.invented,
      specimen.id,
      specimen.label,
      specimen.taxon,
      specimen.kind,
      specimen.typeStatus,
      specimen.horizon,
      specimen.age?.from,
      specimen.age?.to,
      specimen.lifeStage,
      specimen.mirrored,
    ];
    if (specimen.values.length === 0) return [[...facts, null, null, null, null, null, null, null]];
    return specimen.values.map((value) => {
      const key = `${value.trait} ${specimen.id}`;
      return [
        ...facts,
        value.trait,
        value.value,
        value.standardError,
        value.readings,
        value.approximate,
        counted.has(key),
        reasons.get(key),
      ];
    });
  });
  return toCsv(header, rows);
}
