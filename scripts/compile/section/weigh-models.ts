import {
  fitSection,
  kendallTest,
  spearmanTest,
  type NoSection,
  type RankTest,
  type SectionLevel,
  type SectionModel,
} from '../../../analysis/trend/index.ts';

/** Why one cannot tell how a trait moved through a section. */
export type NoVerdict =
  NoSection | 'no-ages' | 'dates-astray' | 'no-weights' | 'models-close' | 'step-near-zero';

/** What may be said of a section; the default is that one cannot tell. */
export type SectionVerdict =
  | { readonly code: 'cannot-tell'; readonly reason: NoVerdict }
  | { readonly code: 'rises' | 'falls' | 'wanders' | 'stays'; readonly model: SectionModel };

/** Models in both forms, rank tests, and what may be said. */
export interface WeighedSection {
  readonly joint: readonly SectionModel[];
  readonly steps: readonly SectionModel[];
  readonly kendall: RankTest | undefined;
  readonly spearman: RankTest | undefined;
  readonly verdict: SectionVerdict;
}

/**
 * Share of the weight that a model needs to be named: nine tenths (Burnham and Anderson 2002, Model Selection and
 * Multimodel Inference, section 4.3, infer from one model alone above 0.9).
 */
export const leastWeight = 0.9;

/** Fits the three models to the levels that have a mean and an age, in both forms, each by itself; `undated` says why none has an age. */
export function weighModels(levels: readonly SectionLevel[], undated: NoVerdict | undefined): WeighedSection {
  const joint = fitSection(levels, { form: 'joint', pooled: true });
  const steps = fitSection(levels, { form: 'steps', pooled: true });
  const ranks = levels.length >= 3 ? rankTests(levels) : undefined;
  const none = undated ?? (typeof joint === 'string' ? joint : undefined);
  return {
    joint: typeof joint === 'string' ? [] : joint,
    steps: typeof steps === 'string' ? [] : steps,
    kendall: ranks?.kendall,
    spearman: ranks?.spearman,
    verdict:
      none === undefined
        ? verdictOfModels(joint as readonly SectionModel[]) // not a reason, or it would be none
        : { code: 'cannot-tell', reason: none },
  };
}

function rankTests(levels: readonly SectionLevel[]): { kendall: RankTest; spearman: RankTest } {
  const times = levels.map(({ elapsedMyr }) => elapsedMyr);
  const means = levels.map(({ mean }) => mean);
  return { kendall: kendallTest(times, means), spearman: spearmanTest(times, means) };
}

/**
 * A model is named only with nine tenths of the weight of the joint form, a direction only where the limits of its step
 * lie on one side of 0.
 */
export function verdictOfModels(models: readonly SectionModel[]): SectionVerdict {
  if (models.some(({ weight }) => weight === null)) return { code: 'cannot-tell', reason: 'no-weights' };
  const model = models.find(({ weight }) => weight! >= leastWeight);
  if (!model) return { code: 'cannot-tell', reason: 'models-close' };
  if (model.name === 'unbiased-walk') return { code: 'wanders', model };
  if (model.name === 'stasis') return { code: 'stays', model };
  const [low, high] = model.meanStepLimits!;
  if (low <= 0 && high >= 0) return { code: 'cannot-tell', reason: 'step-near-zero' };
  return { code: low > 0 ? 'rises' : 'falls', model };
}
