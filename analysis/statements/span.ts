import { decimalsOfError, halfWidthOf, roundedDown, roundedUp, type OpenInterval } from './rounding.ts';
import { statement, type Statement } from './statement.ts';

/** A value over other trees, dating rules and ages. */
export interface SaidSpan {
  readonly middle: OpenInterval;
  readonly interval: OpenInterval;
  readonly over: { readonly trees: number; readonly rules: number; readonly ageSets: number };
}

/**
 * How far an estimate moves over other choices: the range of its middle and the reach of its ends, each rounded outward to the
 * place of its own width. Undefined where an end is open.
 */
export function spanStatement({ middle, interval, over }: SaidSpan): Statement | undefined {
  const [inner, outer] = [rangeOf(middle, 'middle'), rangeOf(interval, 'ends')];
  return inner && outer && statement('span.inferred', { ...countsOf(over), ...inner, ...outer });
}

/** The same for an animal with a limit: what limit and relatives leave open together, and the reach over other choices. */
export function boundedSpanStatement(
  conditional: OpenInterval,
  { interval, over }: SaidSpan,
): Statement | undefined {
  const [inner, outer] = [rangeOf(conditional, 'range'), rangeOf(interval, 'ends')];
  return inner && outer && statement('span.bounded', { ...countsOf(over), ...inner, ...outer });
}

function countsOf({ trees, rules, ageSets }: SaidSpan['over']) {
  return { trees, rules, ages: ageSets };
}

function rangeOf(interval: OpenInterval, name: string): Record<string, number> | undefined {
  const [low, high] = interval;
  if (low === null || high === null) return undefined;
  const decimals = decimalsOfError(halfWidthOf(interval));
  return {
    [`${name}Low`]: roundedDown(low, decimals),
    [`${name}High`]: roundedUp(high, decimals),
    [`${name}Decimals`]: decimals,
  };
}
