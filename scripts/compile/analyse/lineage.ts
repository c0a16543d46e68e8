import type { TraitAnswer } from '../../../analysis/estimate/index.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { AuthoredLineage, Trait } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { congruenceOfTrees, type TreeCongruence } from './congruence.ts';
import { warnOfSpread } from './spread-findings.ts';
import { dateTrees, type DatedLineageTree } from './date-trees.ts';
import { estimateOn, type Depth } from './estimate-lineage-trait.ts';
import { findLimits, warnOfImprobable, type SpecimenLimit } from './limits.ts';
import { observeTrait, type ObservedTrait } from './observe-trait.ts';
import { carrierBeds, placeTaxa } from './placement.ts';
import { spanOfTrait, type TraitSpan } from './span.ts';
import { taxonAges, type TaxonAges } from './taxon-ages.ts';
import { trendOfTrait, type TraitTrend } from './trend.ts';
import { findTraitKind } from './trait-kind.ts';

/** One trait: what was observed, and what relatives say on the reference tree. */
export interface AnalysedTrait {
  record: Located<Trait>;
  observed: ObservedTrait;
  answer: TraitAnswer | undefined;
  /** The same over other trees, datings and ages. */
  span: TraitSpan | undefined;
  /** Change in time; none in a check. */
  trend: TraitTrend | undefined;
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
  /** Each tree against the order of finds; none in a check. */
  congruence: TreeCongruence[];
}

/** Computes traits, ages, dated trees and estimates; what cannot be computed is reported. */
export function analyseLineage(
  authored: AuthoredLineage,
  lineage: ResolvedLineage,
  report: Report,
  depth: Depth = 'whole',
): AnalysedLineage {
  const ages = taxonAges(lineage);
  const observed = lineage.records.traits.records.flatMap((record) => {
    const kind = findTraitKind(record.value);
    if (!kind || !kind.measurements.every((id) => lineage.scheme.measurements.has(id))) return [];
    const own = observeTrait(record.value, kind, lineage);
    warnOfSpread(own, record, report);
    return [{ record, observed: own, limits: findLimits(own, lineage, report) }];
  });
  const beds = observed.map((each) => carrierBeds(each, lineage.records));
  const focus = observed.findIndex((each) => each.record.value.id === authored.focus);
  // One set of trees serves every trait: tips stand where the specimens of the focal trait were found.
  const focalBeds = beds[focus] ?? carrierBeds(undefined, lineage.records);
  const tipAges = placeTaxa(focalBeds, lineage, ages);
  const trees = dateTrees(lineage.trees, tipAges, ages, report);
  const reference = trees.find((tree) => tree.reference);
  const settings = authored.estimate;
  const grounds = { trees, lineage, ages, carriers: focalBeds, reference: tipAges, settings };
  const traits = observed.map((each, index) => {
    const where = each.record.at(['id']);
    const answer = reference && estimateOn(reference, each, settings, { where, report, depth });
    warnOfImprobable(each.limits, answer, report);
    const span =
      depth === 'whole' && answer?.estimated ? spanOfTrait(each, grounds, where, report) : undefined;
    const trend = depth === 'whole' ? trendOfTrait(each, grounds) : undefined;
    return { ...each, placedMa: placeTaxa(beds[index]!, lineage, ages), answer, span, trend };
  });
  const congruence = congruenceOfTrees(trees, ages, settings.seed, depth);
  return { lineage, ages, trees, traits, congruence };
}
