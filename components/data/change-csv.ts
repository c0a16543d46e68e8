import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { toCsv } from './csv.ts';

const start = (lineage: CompiledLineage) => [lineage.lineage, lineage.about.invented];

const trendHeader = [
  'lineage',
  'invented',
  'trait',
  'unit',
  'scale',
  'verdict',
  'tree',
  'dating',
  'perMyrOnScale',
  'intervalLow',
  'intervalHigh',
  'level',
  'pValue',
  'df',
  'reason',
  'setsOfAges',
  'rising',
  'falling',
  'contentDigest',
];

/** The trend of every trait on every tree and rule of dating, one a row; a row without a slope says why. */
export function trendsCsv(lineage: CompiledLineage): string {
  const rows = lineage.traits.flatMap(({ id, unit, scale, trend }) =>
    (trend?.rows ?? []).map(({ tree, dating, slope, reason, ages }) => [
      ...start(lineage),
      id,
      unit,
      scale,
      trend!.verdict,
      tree,
      dating,
      slope?.perMyr,
      slope?.interval[0],
      slope?.interval[1],
      trend!.level,
      slope?.pValue,
      slope?.df,
      reason,
      ages.sets,
      ages.rising,
      ages.falling,
      lineage.contentDigest,
    ]),
  );
  return toCsv(trendHeader, rows);
}

const ghostHeader = ['lineage', 'invented', 'tree', 'node', 'taxon', 'fromMa', 'toMa', 'contentDigest'];

/** Time that the reference tree implies and no find fills, one stretch a row. */
export function ghostsCsv(lineage: CompiledLineage): string {
  const tree = lineage.trees.find(({ reference }) => reference)?.id;
  const rows = lineage.ghosts.map(({ node, taxon, fromMa, toMa }) => [
    ...start(lineage),
    tree,
    node,
    taxon,
    fromMa,
    toMa,
    lineage.contentDigest,
  ]);
  return toCsv(ghostHeader, rows);
}

const congruenceHeader = [
  'lineage',
  'invented',
  'tree',
  'taxa',
  'gapMyr',
  'stratigraphicConsistency',
  'relativeCompletenessPercent',
  'gapExcessRatio',
  'gapRatio',
  'permutations',
  'pValue',
  'meanGapMyr',
  'reason',
  'contentDigest',
];

/** Each tree against the order of finds, one a row. */
export function congruenceCsv(lineage: CompiledLineage): string {
  const rows = lineage.congruence.map((each) => [
    ...start(lineage),
    each.tree,
    each.taxa,
    each.gapMyr,
    each.consistency,
    each.completeness,
    each.gapExcessRatio,
    each.gapRatio,
    each.permutations?.draws,
    each.permutations?.pValue,
    each.permutations?.meanGapMyr,
    each.reason,
    lineage.contentDigest,
  ]);
  return toCsv(congruenceHeader, rows);
}
