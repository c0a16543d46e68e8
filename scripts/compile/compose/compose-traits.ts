import type { AnalysedLineage, AnalysedTrait } from '../analyse/lineage.ts';
import { fromScale, type TraitScale } from '../../../analysis/traits/index.ts';
import { unitOf } from '../analyse/trait-kind.ts';
import type { CompiledTrait } from '../contract.ts';
import { nodeIds } from './compose-records.ts';
import { composeStatements } from './compose-statements.ts';
import { composeValue } from './compose-value.ts';
import { composeAges, composeModel, composeRepeats, composeTwigs, type Estimated } from './compose-model.ts';
import { measuredLine } from './measured-line.ts';
import { composeSize } from './compose-size.ts';
import { composeRates, composeTrend } from './compose-trend.ts';
import { textsOf } from './texts.ts';

/** Traits as the pages read them: what was measured, the model, and a value for every taxon. */
export function composeTraits(analysed: AnalysedLineage): CompiledTrait[] {
  return analysed.traits.map((trait) => composeTrait(trait, analysed));
}

function composeTrait(analysedTrait: AnalysedTrait, analysed: AnalysedLineage): CompiledTrait {
  const { observed, answer } = analysedTrait;
  const { trait, kind, scale, spread } = observed;
  const reference = analysedTrait.trees.find((tree) => tree.reference);
  const line = measuredLine(kind, analysed.lineage.scheme);
  const bare = {
    id: trait.id,
    unit: unitOf(trait, kind),
    scale: scale.kind,
    kind: kind.kind,
    label: trait.label,
    meaning: trait.meaning,
    ...(trait.why ? { why: trait.why } : {}),
    marks: trait.marks.map((mark) => ({ at: mark.at, text: textsOf(mark, ['at']) })),
    ...(trait.accent === undefined ? {} : { accent: trait.accent }),
    ...(line ? { measured: line } : {}),
    pooled: spread ?? null,
    repeats: composeRepeats(observed),
    ...composeAges(analysedTrait, analysed),
    model: answer?.estimated && reference ? composeModel(answer, reference.id, analysed.settings.seed) : null,
    sensitivity: (analysedTrait.sensitivity ?? []).map((each) => ({ ...each })),
    twigs: composeTwigs(analysedTrait),
    values: analysed.lineage.records.taxa.records.map(({ value }) => composeValue(value, analysedTrait)),
    nodes: answer?.estimated && reference ? composeForks(answer, nodeIds(reference.dated.label), scale) : [],
    ...(analysedTrait.trend ? { trend: composeTrend(analysedTrait.trend, scale) } : {}),
    ...(analysedTrait.size ? { size: composeSize(analysedTrait.size, analysedTrait, analysed) } : {}),
    ...(analysedTrait.rates ? { rates: composeRates(analysedTrait.rates) } : {}),
    leaveOneOut: answer?.estimated ? answer.leaveOneOut.map((each) => composeLeftOut(each, scale)) : [],
  };
  return { ...bare, statements: composeStatements(bare, analysed.settings.model) };
}

function composeForks(answer: Estimated, ids: readonly string[], scale: TraitScale): CompiledTrait['nodes'] {
  return answer.nodes
    .filter((node) => node.label === '')
    .map(({ node, median, interval }) => ({
      node: ids[node]!,
      median: fromScale(scale, median),
      interval: [fromScale(scale, interval[0]), fromScale(scale, interval[1])],
    }));
}

function composeLeftOut(
  each: Estimated['leaveOneOut'][number],
  scale: TraitScale,
): CompiledTrait['leaveOneOut'][number] {
  const observed = fromScale(scale, each.observed);
  const median = fromScale(scale, each.median);
  const interval: [number, number] = [fromScale(scale, each.interval[0]), fromScale(scale, each.interval[1])];
  return { taxon: each.taxon, observed, median, interval, miss: observed - median, inside: each.inside };
}
