/** What a value is, exactly one for each taxon and trait. */
export type ValueStatus = 'measured' | 'bounded' | 'inferred' | 'unknown';

/** Why a value is unknown. */
export type UnknownReason =
  'no-tree' | 'not-in-tree' | 'fewer-than-four' | 'not-estimated' | 'no-narrower-than-without-tree';

/** What the status of one taxon's value depends on. */
export interface StatusGrounds {
  /** Eligible specimens that yield the value from preserved parts. */
  readonly measuredSpecimens: number;
  /** Eligible broken specimens that limit it. */
  readonly limitingSpecimens: number;
  readonly hasTree: boolean;
  readonly inTree: boolean;
  /** Measured taxa of the tree. */
  readonly measuredTaxa: number;
  /** Interval from relatives and interval that uses no tree, on one scale; undefined where there is no estimate. */
  readonly interval?: readonly [number, number] | undefined;
  readonly treeBlind?: readonly [number, number] | undefined;
}

/**
 * Status of a value: measured before bounded before inferred; unknown without a tree or outside it, with fewer than
 * four measured taxa, without an estimate, or where its interval is no narrower than the one that uses no tree.
 */
export function statusOf(grounds: StatusGrounds): {
  readonly status: ValueStatus;
  readonly reason?: UnknownReason;
} {
  if (grounds.measuredSpecimens > 0) return { status: 'measured' };
  if (grounds.limitingSpecimens > 0) return { status: 'bounded' };
  const reason = findUnknownReason(grounds);
  return reason === undefined ? { status: 'inferred' } : { status: 'unknown', reason };
}

function findUnknownReason(grounds: StatusGrounds): UnknownReason | undefined {
  const { interval, treeBlind } = grounds;
  if (!grounds.hasTree) return 'no-tree';
  if (!grounds.inTree) return 'not-in-tree';
  if (grounds.measuredTaxa < 4) return 'fewer-than-four';
  if (!interval || !treeBlind) return 'not-estimated';
  return widthOf(interval) < widthOf(treeBlind) ? undefined : 'no-narrower-than-without-tree';
}

function widthOf([low, high]: readonly [number, number]): number {
  return high - low;
}
