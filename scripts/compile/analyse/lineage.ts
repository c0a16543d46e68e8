import type { SensitivityModel, TraitAnswer } from '../../../analysis/estimate/index.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { AuthoredLineage, Trait } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { congruenceOfTrees, type TreeCongruence } from './congruence.ts';
import { warnOfSpread } from './spread-findings.ts';
import { treeDater, type DatedLineageTree } from './date-trees.ts';
import { estimateOn, sensitivityOn, type Depth } from './estimate-lineage-trait.ts';
import { warnOfEstimates } from './estimate-findings.ts';
import { findLimits, warnOfImprobable, type SpecimenLimit } from './limits.ts';
import { observeTrait, type ObservedTrait } from './observe-trait.ts';
import { carrierBeds, placeTaxa } from './placement.ts';
import { ageDraws } from './age-draws.ts';
import { ageSampler } from './age-sampler.ts';
import { analyseSection, type AnalysedSection } from '../section/analyse-section.ts';
import { spanOfTrait, type TraitSpan } from './span.ts';
import { taxonAges, type TaxonAges } from './taxon-ages.ts';
import { ratesOfTrait, type PairRate } from './rates.ts';
import { sizeOfTrait, type TraitSize } from './size.ts';
import { warnOfTrend } from './trend-findings.ts';
import { trendOfTrait, type TraitTrend } from './trend.ts';
import { findTraitKind } from './trait-kind.ts';

/** One trait: what was observed, and what relatives say on the reference tree. */
export interface AnalysedTrait {
  record: Located<Trait>;
  observed: ObservedTrait;
  /** The trees, with every tip at the age of the finds that carry this trait. */
  trees: readonly DatedLineageTree[];
  answer: TraitAnswer | undefined;
  /** Models that are only compared with the one used. */
  sensitivity: readonly SensitivityModel[] | undefined;
  /** The same over other trees, datings and ages. */
  span: TraitSpan | undefined;
  /** Change in time; none in a check. */
  trend: TraitTrend | undefined;
  /** Against the size that the trait declares; none in a check. */
  size: TraitSize | undefined;
  /** How fast a length changed; none for another trait, and none in a check. */
  rates: PairRate[] | undefined;
  /** Limits from broken specimens, by taxon. */
  limits: Map<string, SpecimenLimit[]>;
  /** Age in Ma at which each taxon's mark stands. */
  placedMa: Map<string, number>;
}

/** A lineage with everything computed, before words. */
export interface AnalysedLineage {
  lineage: ResolvedLineage;
  ages: Map<string, TaxonAges>;
  /** The trees as the trait that the pages open with dates them. */
  trees: readonly DatedLineageTree[];
  traits: AnalysedTrait[];
  /** Each tree against the order of finds; none in a check. */
  congruence: TreeCongruence[];
  /** What the author asked of the estimates. */
  settings: AuthoredLineage['estimate'];
  section: AnalysedSection | undefined;
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
  const dater = treeDater(lineage.trees, ages, report);
  const settings = authored.estimate;
  const drawn = ageDraws(lineage, ages, settings.seed);
  const traits = observed.map((each): AnalysedTrait => {
    const where = each.record.at(['id']);
    const carriers = carrierBeds(each, lineage.records);
    const placedMa = placeTaxa(carriers, lineage, ages);
    const trees = dater(placedMa);
    const reference = trees.find((tree) => tree.reference);
    const answer = reference && estimateOn(reference, each, settings, { where, report, depth });
    // a trait that is followed through a section need not be told from relatives
    const isOfSection = lineage.records.section?.value.trait === each.record.value.id;
    const told = answer && !isOfSection ? warnOfEstimates(each, reference, answer, where, report) : undefined;
    warnOfImprobable(each.limits, answer, report);
    const grounds = { trees, ages: ageSampler(lineage, carriers, placedMa, drawn), settings };
    const span =
      depth === 'whole' && answer?.estimated ? spanOfTrait(each, grounds, where, report) : undefined;
    const trend = depth === 'whole' ? trendOfTrait(each, grounds) : undefined;
    if (answer && !isOfSection) warnOfTrend(each, reference, { trend, told }, where, report);
    const rates = depth === 'whole' ? ratesOfTrait(each, reference) : undefined;
    const size = depth === 'whole' ? sizeOfTrait(each, lineage, grounds) : undefined;
    const sensitivity =
      depth === 'whole' && reference && answer?.estimated ? sensitivityOn(reference, each) : undefined;
    return { ...each, placedMa, trees, answer, sensitivity, span, trend, size, rates };
  });
  const focal = traits.find(({ record }) => record.value.id === authored.focus);
  const trees = focal?.trees ?? dater(placeTaxa(carrierBeds(undefined, lineage.records), lineage, ages));
  const congruence = congruenceOfTrees(trees, ages, settings.seed, depth);
  const section = analyseSection(lineage, settings, { report, depth });
  return { lineage, ages, trees, traits, congruence, settings, section };
}
