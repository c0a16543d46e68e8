import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { toCsv } from './csv.ts';

const levelHeader = [
  'lineage',
  'invented',
  'section',
  'level',
  'heightM',
  'horizon',
  'ageMa',
  'ageSigmaMa',
  'averagingYears',
  'averagingSource',
  'unworn',
  'worn',
  'meanMm',
  'intervalLowMm',
  'intervalHighMm',
  'unwornMeanMm',
  'effectiveN',
  'compared',
  'contentDigest',
  'resultDigest',
];

/** Every level of the section, one a row from the base up, dated beds among them; a header alone without a section. */
export function levelsCsv(lineage: CompiledLineage): string {
  const { section } = lineage;
  const rows = (section?.levels ?? []).map((level) => [
    lineage.lineage,
    lineage.about.invented,
    section!.id,
    level.id,
    level.heightM,
    level.horizon,
    level.ageMa,
    level.ageSigmaMa,
    level.averagingYears,
    level.averagingSource,
    level.unworn,
    level.worn,
    level.estimate,
    level.interval[0],
    level.interval[1],
    level.unwornMean,
    level.effectiveN,
    level.compared,
    lineage.contentDigest,
    lineage.resultDigest,
  ]);
  return toCsv(levelHeader, rows);
}

const individualHeader = [
  'lineage',
  'invented',
  'section',
  'institutionCode',
  'catalogNumber',
  'level',
  'tooth',
  'wear',
  'trait',
  'valueMm',
  'atLeast',
];

/** Every individual of the section, one a row; `atLeast` is true where the crown is worn and the value only a lower limit. */
export function individualsCsv(lineage: CompiledLineage): string {
  const { section } = lineage;
  const rows = (section?.individuals ?? []).map((each) => [
    lineage.lineage,
    lineage.about.invented,
    section!.id,
    section!.institutionCode,
    each.catalogNumber,
    each.level,
    section!.tooth,
    each.wear,
    section!.trait,
    each.valueMm,
    each.atLeast,
  ]);
  return toCsv(individualHeader, rows);
}

const rateHeader = [
  'lineage',
  'invented',
  'section',
  'trait',
  'fromLevel',
  'toLevel',
  'intervalMyr',
  'darwins',
  'standardError',
];

/** Rates between pairs of levels without direction, the shortest time first; a rate never stands without its time. */
export function ratesCsv(lineage: CompiledLineage): string {
  const { section } = lineage;
  const rows = (section?.rates?.pairs ?? []).map(({ from, to, intervalMyr, darwins, standardError }) => [
    lineage.lineage,
    lineage.about.invented,
    section!.id,
    section!.trait,
    from,
    to,
    intervalMyr,
    darwins,
    standardError,
  ]);
  return toCsv(rateHeader, rows);
}
