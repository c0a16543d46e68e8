import { statusOf, type NodeEstimate } from '../../../analysis/estimate/index.ts';
import type { AnalysedTrait } from './lineage.ts';

/** The status of a taxon's value, and what relatives say where the status rests on them. */
export interface TaxonStatus extends ReturnType<typeof statusOf> {
  fromRelatives: NodeEstimate | undefined;
}

/** Works out the status of one taxon for one trait from what was found and what relatives say. */
export function statusOfTaxon(
  taxon: string,
  { observed, limits, answer, trees }: AnalysedTrait,
): TaxonStatus {
  const reference = trees.find((tree) => tree.reference)?.taxa;
  const estimated = answer?.estimated ? answer : undefined;
  const fromRelatives = estimated?.nodes.find((node) => node.label === taxon);
  const inTree = reference?.has(taxon) ?? false;
  const measuredTaxa = [...observed.taxa].filter(([id, { mean }]) => mean && reference?.has(id)).length;
  const status = statusOf({
    measuredSpecimens: observed.taxa.get(taxon)!.counted.length,
    limitingSpecimens: limits.get(taxon)?.length ?? 0,
    hasTree: reference !== undefined,
    inTree,
    measuredTaxa,
    interval: fromRelatives?.interval,
    treeBlind: estimated?.treeBlind,
  });
  return { ...status, fromRelatives };
}
