import { decimalsOfError, halfWidthOf, rounded, type OpenInterval } from './rounding.ts';
import { statement, type Statement } from './statement.ts';

/** A measured animal, worked out from the others as if it had not been found, in the trait's unit. */
export interface Miss {
  readonly taxon: string;
  readonly observed: number;
  readonly median: number;
  readonly interval: OpenInterval;
  readonly inside: boolean;
}

/**
 * How far the method misses on average, what half width it claims on average, and how often the value lies inside; numbers to
 * the place that the half width supports. Undefined for no misses, or where an interval has no end.
 */
export function leftOutStatement(misses: readonly Miss[]): Statement | undefined {
  const count = misses.length;
  if (count === 0) return undefined;
  let [miss, half] = [0, 0];
  for (const { observed, median, interval } of misses) {
    const width = halfWidthOf(interval);
    if (width === undefined) return undefined;
    miss += Math.abs(observed - median) / count;
    half += width / count;
  }
  const decimals = decimalsOfError(half);
  return statement('leftOut.sentence', {
    miss: rounded(miss, decimals),
    half: rounded(half, decimals),
    inside: misses.filter(({ inside }) => inside).length,
    count,
    decimals,
  });
}
