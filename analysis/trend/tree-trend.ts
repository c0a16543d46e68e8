import { slopeOnTree, type NoSlope, type Observation, type TreeSlope } from '../estimate/index.ts';
import type { DatedTree } from '../tree/index.ts';

/** A trend on one dated tree: change of the trait in its scale's units a million years, or why there is none. */
export interface TreeTrend {
  readonly id: string;
  readonly slope: TreeSlope | NoSlope;
}

/** What may be said of a trend. */
export type TrendVerdict = 'rises' | 'falls' | 'cannot-tell';

/**
 * Trend on every dating of every tree given: the change a million years with its interval and test, and points of the
 * line at the times since the root that are asked for.
 */
export function trendsOn(
  hypotheses: readonly { readonly id: string; readonly tree: DatedTree }[],
  observations: readonly Observation[],
  { level = 0.95, lineAt = [] }: { readonly level?: number; readonly lineAt?: readonly number[] } = {},
): TreeTrend[] {
  return hypotheses.map(({ id, tree }) => {
    const tips = new Set(tree.label);
    const present = observations.filter(({ taxon }) => tips.has(taxon));
    return { id, slope: slopeOnTree({ tree, observations: present, predictor: 'time', level, lineAt }) };
  });
}

/**
 * What may be said: that the trait rises or falls, where the first trend, the reference, passes its test at 1 − level and
 * all others have the same sign; in every other case that one cannot tell.
 */
export function verdictOf(trends: readonly TreeTrend[], level = 0.95): TrendVerdict {
  const slopes = trends.map(({ slope }) => (typeof slope === 'string' ? undefined : slope));
  const reference = slopes[0];
  if (!reference || reference.pValue > 1 - level) return 'cannot-tell';
  const sign = Math.sign(reference.median);
  if (slopes.some((slope) => !slope || Math.sign(slope.median) !== sign)) return 'cannot-tell';
  return sign > 0 ? 'rises' : 'falls';
}
