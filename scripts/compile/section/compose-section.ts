import type { z } from 'zod';
import { fromScale, type TraitScale } from '../../../analysis/traits/index.ts';
import type { RankTest, SectionModel } from '../../../analysis/trend/index.ts';
import type { section as compiledSection } from '../contract-section.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { AnalysedSection } from './analyse-section.ts';
import type { LevelChange } from './change-rates.ts';
import { leastWeight, type SectionVerdict } from './weigh-models.ts';

type CompiledSection = z.output<typeof compiledSection>;

/** The section as the pages read it: levels in mm, models on their own scale, a verdict as a code. */
export function composeSection(analysed: AnalysedSection, lineage: ResolvedLineage): CompiledSection {
  const { section, scale, weighed, changes, dated, spread } = analysed;
  return {
    id: section.id,
    name: section.name,
    taxon: section.taxon,
    trait: section.trait,
    unit: 'mm',
    scale: scale.kind,
    tooth: section.tooth,
    institutionCode: section.institutionCode ?? null,
    wear: section.wear,
    generation: composeGeneration(section.generation),
    drawing: composeDrawing(analysed, lineage),
    rocks: section.rocks,
    beds: dated.beds.map(({ level, heightM, ageMa, sigmaMa }) => ({
      level: level.id,
      horizon: level.horizon!,
      heightM,
      ageMa,
      sigmaMa,
    })),
    levels: analysed.levels.map((level) => composeLevel(level, analysed)),
    individuals: analysed.levels.flatMap(({ individuals }) => individuals.map((each) => ({ ...each }))),
    spread: spread ?? null,
    models: {
      joint: weighed.joint.map((model) => composeModel(model, scale)),
      steps: weighed.steps.map((model) => composeModel(model, scale)),
    },
    ranks:
      weighed.kendall && weighed.spearman
        ? { kendall: composeRank(weighed.kendall), spearman: composeRank(weighed.spearman) }
        : null,
    span: analysed.span ? { ...analysed.span } : null,
    moved: composeMoved(analysed.moved),
    rates: composeRates(analysed.rates),
    change: changes.whole ? composeChange(changes.whole) : null,
    steps: changes.steps.map(composeChange),
    verdict: composeVerdict(weighed.verdict),
    sources: section.sources ?? [],
  };
}

function composeGeneration(
  generation: AnalysedSection['section']['generation'],
): CompiledSection['generation'] {
  const source = generation?.source;
  return generation && source !== undefined ? { years: generation.years, source } : null;
}

function composeLevel(
  { level, unworn, worn, summary, unwornMean, standardError, interval }: AnalysedSection['levels'][number],
  { scale, dated }: AnalysedSection,
): CompiledSection['levels'][number] {
  const age = dated.ages.get(level.id);
  const inMm = (value: number | undefined) => (value === undefined ? null : fromScale(scale, value));
  return {
    id: level.id,
    heightM: level.heightM,
    horizon: level.horizon ?? null,
    ageMa: age?.ageMa ?? null,
    ageSigmaMa: age?.sigmaMa ?? null,
    averagingYears: level.averagingYears ?? null,
    averagingSource: level.source ?? null,
    unworn,
    worn,
    estimate: inMm(summary?.mean),
    interval: [inMm(interval?.[0]), inMm(interval?.[1])],
    standardError: standardError ?? null,
    effectiveN: summary?.n ?? null,
    deviation: summary && summary.variance > 0 ? Math.sqrt(summary.variance) : null,
    unwornMean: inMm(unwornMean),
    compared: age !== undefined && summary !== undefined,
  };
}

/** Numbers that a model lacks are null; those that are infinite become so where they leave. */
function composeModel(model: SectionModel, scale: TraitScale): CompiledSection['models']['joint'][number] {
  const { level, meanStep, meanStepLimits, varianceLimits, ...rest } = model;
  return {
    ...rest,
    varianceLimits: [...varianceLimits],
    meanStep: meanStep ?? null,
    meanStepLimits: meanStepLimits ? [...meanStepLimits] : [null, null],
    level: level === undefined ? null : fromScale(scale, level),
  };
}

function composeMoved(moved: AnalysedSection['moved']): CompiledSection['moved'] {
  return moved ? { sets: moved.sets, weights: moved.weights.map((weight) => ({ ...weight })) } : null;
}

/** Rates with the ids of their levels. */
function composeRates(rates: AnalysedSection['rates']): CompiledSection['rates'] {
  if (!rates) return null;
  const { levels, pairs, total, classes, line, still, walk } = rates;
  const range = ({ middle, range: [low, high] }: typeof still) => ({
    middle,
    range: [low, high] as [number, number],
  });
  return {
    pairs: pairs.map(({ from, to, ...rest }) => ({ from: levels[from]!, to: levels[to]!, ...rest })),
    total,
    classes: classes.map((each) => ({ ...each })),
    line: { ...line },
    still: range(still),
    walk: walk ? range(walk) : null,
  };
}

function composeRank({
  coefficient,
  pTwoSided,
  method,
}: RankTest): NonNullable<CompiledSection['ranks']>['kendall'] {
  return { coefficient, pTwoSided, method };
}

function composeChange(change: LevelChange): NonNullable<CompiledSection['change']> {
  return {
    ...change,
    darwins: { ...change.darwins },
    haldanes: change.haldanes ? { ...change.haldanes } : null,
  };
}

function composeVerdict(verdict: SectionVerdict): CompiledSection['verdict'] {
  const named = verdict.code === 'cannot-tell' ? undefined : verdict.model;
  return {
    code: verdict.code,
    reason: verdict.code === 'cannot-tell' ? verdict.reason : null,
    model: named?.name ?? null,
    weight: named?.weight ?? null,
    leastWeight,
  };
}

/** The template of the view that the section names, and the landmarks between which the trait is measured. */
function composeDrawing(
  { section }: AnalysedSection,
  { records, scheme }: ResolvedLineage,
): CompiledSection['drawing'] {
  const trait = records.traits.records.find(({ value }) => value.id === section.trait)!.value;
  const measurement = scheme.measurements.get(trait.length!);
  const template = section.drawing && scheme.views.get(section.drawing.view)?.template;
  if (!section.drawing || template === undefined || !measurement?.from || !measurement.to) return null;
  const { crownLengthMm, source } = section.drawing;
  return { template, crownLengthMm, from: measurement.from, to: measurement.to, source: source ?? null };
}
