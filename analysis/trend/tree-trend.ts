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
 * What may be said: that the trait rises or falls, where the interval of the first trend, the reference, leaves no change
 * out and all others have the same sign; in every other case that one cannot tell.
 */
export function verdictOf(trends: readonly TreeTrend[]): TrendVerdict {
  const slopes = trends.map(({ slope }) => slope);
  return ({ above: 'rises', below: 'falls', 'cannot-tell': 'cannot-tell' } as const)[sideOf(slopes, 0)];
}

/** What may be said of a slope against a value that it may stand on either side of. */
export type SideVerdict = 'above' | 'below' | 'cannot-tell';

/**
 * On which side of a value all slopes lie: where the interval of the first, the reference, leaves the value out and all
 * others lie on the same side; in every other case, and where one has no slope but a reason, one cannot tell.
 */
export function sideOf(slopes: readonly (TreeSlope | string)[], value: number): SideVerdict {
  const told = slopes.flatMap((slope) => (typeof slope === 'string' ? [] : slope));
  const [reference] = told;
  if (!reference || told.length < slopes.length) return 'cannot-tell';
  if (reference.interval[0] > value && told.every(({ median }) => median > value)) return 'above';
  return reference.interval[1] < value && told.every(({ median }) => median < value)
    ? 'below'
    : 'cannot-tell';
}
