import {
  findLevelSummary,
  samplingVariances,
  type LevelSummary,
  type LevelValue,
} from '../../../analysis/trend/index.ts';
import { studentQuantile } from '../../../analysis/statistics/index.ts';
import { toScale, type TraitScale } from '../../../analysis/traits/index.ts';
import type { Individual } from './read-individuals.ts';
import type { LevelRow } from './read-levels.ts';

/** A level with what its individuals say; numbers on the scale of the model. */
export interface SummarisedLevel {
  readonly level: LevelRow;
  readonly individuals: readonly Individual[];
  readonly values: readonly LevelValue[];
  readonly unworn: number;
  readonly worn: number;
  /** Absent where no crown is unworn. */
  readonly summary?: LevelSummary;
  readonly unwornMean?: number;
  /** Of the mean, by the spread shared over all levels; absent where no level has a spread. */
  readonly standardError?: number;
  readonly interval?: readonly [number, number];
}

/** What is known of the spread within levels, shared over all of them. */
export interface SharedSpread {
  readonly variance: number;
  readonly df: number;
}

/**
 * Mean of every level with its 95% interval by Student's t, one variance among individuals shared over all levels
 * because no level has enough to tell its own (the pooled estimate of analysis of variance). A level with one unworn crown
 * borrows that spread; worn crowns enter as floors.
 */
export function summariseLevels(
  levels: readonly LevelRow[],
  individuals: readonly Individual[],
  scale: TraitScale,
): { readonly levels: SummarisedLevel[]; readonly spread: SharedSpread | undefined } {
  const byLevel = Map.groupBy(individuals, ({ level }) => level);
  const plain = levels.map((level) => describe(level, byLevel.get(level.id) ?? [], scale));
  const told = plain.flatMap(({ summary }) => summary ?? []);
  const df = told.reduce((sum, { n }) => sum + n - 1, 0);
  const variances = samplingVariances(told, true);
  const shared = df > 0 ? variances[0]! * told[0]!.n : 0;
  if (!(shared > 0)) return { levels: plain, spread: undefined };
  const times = studentQuantile(0.975, df);
  return {
    spread: { variance: shared, df },
    levels: plain.map((each) => {
      if (!each.summary) return each;
      const standardError = Math.sqrt(shared / each.summary.n);
      const reach = times * standardError;
      return {
        ...each,
        standardError,
        interval: [each.summary.mean - reach, each.summary.mean + reach] as const,
      };
    }),
  };
}

function describe(level: LevelRow, individuals: readonly Individual[], scale: TraitScale): SummarisedLevel {
  const values = individuals.map(({ valueMm, atLeast }) => ({ value: toScale(scale, valueMm), atLeast }));
  const whole = values.filter(({ atLeast }) => !atLeast).map(({ value }) => value);
  const unwornMean = whole.reduce((sum, value) => sum + value, 0) / whole.length;
  const summary = findLevelSummary(values) ?? plainSummary(whole, unwornMean);
  return {
    level,
    individuals,
    values,
    unworn: whole.length,
    worn: values.length - whole.length,
    ...(summary ? { summary, unwornMean } : {}),
  };
}

/** Of unworn crowns that are all alike, or of one: a mean without a spread of its own; floors cannot add to it. */
function plainSummary(whole: readonly number[], mean: number): LevelSummary | undefined {
  if (whole.length === 0) return undefined;
  return { mean, variance: 0, n: whole.length, measured: whole.length, floors: 0 };
}
