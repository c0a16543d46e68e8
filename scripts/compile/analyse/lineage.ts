import type { TraitAnswer } from '../../../analysis/estimate/index.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { AuthoredLineage, Trait } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { warnOfSpread } from './spread-findings.ts';
import { dateTrees, type DatedLineageTree } from './date-trees.ts';
import { estimateOn } from './estimate-lineage-trait.ts';
import { findLimits, type SpecimenLimit } from './limits.ts';
import { observeTrait, type ObservedTrait } from './observe-trait.ts';
import { placementMa, taxonAges, type TaxonAges } from './taxon-ages.ts';
import { findTraitKind } from './trait-kind.ts';

/** One trait: what was observed, and what relatives say on the reference tree. */
export interface AnalysedTrait {
  record: Located<Trait>;
  observed: ObservedTrait;
  answer: TraitAnswer | undefined;
  /** Limits from broken specimens, by taxon. */
  limits: Map<string, SpecimenLimit[]>;
  /** Age in Ma at which each taxon's mark stands. */
  placedMa: Map<string, number>;
}

/** A lineage with everything computed, before words. */
export interface AnalysedLineage {
  lineage: ResolvedLineage;
  ages: Map<string, TaxonAges>;
  trees: DatedLineageTree[];
  traits: AnalysedTrait[];
}

/** Computes traits, ages, dated trees and estimates; what cannot be computed is reported. */
export function analyseLineage(
  authored: AuthoredLineage,
  lineage: ResolvedLineage,
  report: Report,
): AnalysedLineage {
  const ages = taxonAges(lineage);
  const observed = lineage.records.traits.records.flatMap((record) => {
    const kind = findTraitKind(record.value);
    if (!kind || !kind.measurements.every((id) => lineage.scheme.measurements.has(id))) return [];
    const own = observeTrait(record.value, kind, lineage);
    warnOfSpread(own, record, report);
    return [{ record, observed: own, limits: findLimits(own, lineage, report) }];
  });
  const placed = observed.map((each) => placements(each, lineage, ages));
  const focus = observed.findIndex((each) => each.record.value.id === authored.focus);
  // One set of trees serves every trait: tips stand where the specimens of the focal trait were found.
  const tipAges = placed[focus] ?? placements(undefined, lineage, ages);
  const trees = dateTrees(lineage.trees, tipAges, ages, report);
  const reference = trees.find((tree) => tree.reference);
  const settings = authored.estimate;
  const traits = observed.map((each, index) => ({
    ...each,
    placedMa: placed[index]!,
    answer: reference && estimateOn(reference, each, settings, each.record.at(['id']), report),
  }));
  return { lineage, ages, trees, traits };
}

function placements(
  trait: Pick<AnalysedTrait, 'observed' | 'limits'> | undefined,
  lineage: ResolvedLineage,
  ages: ReadonlyMap<string, TaxonAges>,
): Map<string, number> {
  const placed = new Map<string, number>();
  for (const { value: taxon } of lineage.records.taxa.records) {
    const whole = trait?.observed.taxa.get(taxon.id)?.counted ?? [];
    const carriers = whole.length > 0 ? whole : (trait?.limits.get(taxon.id) ?? []);
    const at = placementMa(
      taxon,
      carriers.map((each) => each.specimen),
      ages.get(taxon.id)?.age,
      lineage,
    );
    if (at !== undefined) placed.set(taxon.id, at);
  }
  return placed;
}
