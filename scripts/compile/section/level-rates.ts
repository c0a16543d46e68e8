import {
  rateClasses,
  rateLine,
  ratesBetweenLevels,
  slopesByChance,
  weighSection,
  type LevelRate,
  type RateClass,
  type SectionLevel,
} from '../../../analysis/trend/index.ts';
import { findRateSample, type DatedSummary } from './change-rates.ts';

/** Slopes that simulated levels give: their middle and 95% range. */
export type ChanceSlopes = NonNullable<ReturnType<typeof slopesByChance>>;

/** Rates between the levels of a section against the time between them. */
export interface SectionRates {
  /** Ids of the levels by their place in a pair. */
  readonly levels: readonly string[];
  readonly pairs: readonly LevelRate[];
  readonly total: number;
  /** The same by the time that they span. */
  readonly classes: readonly RateClass[];
  readonly line: NonNullable<ReturnType<typeof rateLine>>;
  /** The slope if nothing changed and samples only differed by chance. */
  readonly still: ChanceSlopes;
  /** The slope of a walk without direction, as fast as the best of this section; absent where that takes no steps. */
  readonly walk?: ChanceSlopes;
}

/** More pairs than these say nothing more, and a page of them is slow. */
const mostPairs = 2000;

/** Simulated sections behind a range of slopes. */
const chanceDraws = 199;

/**
 * Rates between all pairs of dated levels that show a spread, for a length on log scale; undefined for another, and where
 * no line can be laid through them.
 */
export function ratesOfSection(
  series: readonly DatedSummary[],
  levels: readonly SectionLevel[],
  { scale, seed }: { readonly scale: string; readonly seed: number },
): SectionRates | undefined {
  if (scale !== 'log') return undefined;
  const rated = series.flatMap(({ summarised }, index) => {
    const sample = findRateSample(summarised);
    return sample ? [{ id: summarised.level.id, elapsedMyr: levels[index]!.elapsedMyr, sample }] : [];
  });
  const { pairs, total } = ratesBetweenLevels(rated, mostPairs);
  const line = rateLine(pairs);
  const chance = (walkVariance: number) =>
    slopesByChance({ levels: rated, pairs, walkVariance, draws: chanceDraws, seed });
  const still = line && chance(0);
  if (!line || !still) return undefined;
  const variance = walkVarianceOf(levels);
  const walk = variance > 0 ? chance(variance) : undefined;
  return {
    levels: rated.map(({ id }) => id),
    pairs,
    total,
    classes: rateClasses(pairs),
    line,
    still,
    ...(walk ? { walk } : {}),
  };
}

/** Variance of the best walk without direction, natural logs squared a million years; 0 where none can be fitted. */
function walkVarianceOf(levels: readonly SectionLevel[]): number {
  const models = weighSection(levels, { form: 'joint', pooled: true });
  if (typeof models === 'string') return 0;
  return models.find(({ name }) => name === 'unbiased-walk')!.variance;
}
