import { decimalsOfError, halfWidthOf, rounded, roundedDown, roundedUp } from './rounding.ts';
import type { SaidValue } from './said-value.ts';
import { statement, type Statement } from './statement.ts';

/**
 * A value as it is printed, rounded to the place of its own error: a measured one with its plus or minus, a limit with its
 * side, an estimate with its brackets. An estimate never goes without its interval: without one it is not known.
 */
export function valueStatement(value: SaidValue): Statement {
  const error = halfWidthOf(value.interval);
  const decimals = decimalsOfError(error);
  const [low, high] = value.interval;
  switch (value.status) {
    case 'measured': {
      const mean = rounded(value.estimate!, decimals);
      return error === undefined
        ? statement('value.plain', { value: mean, decimals })
        : statement('value.plusMinus', { value: mean, error: rounded(error, decimals), decimals });
    }
    case 'bounded':
      return limitStatement(value, decimals);
    case 'inferred':
      if (low === null || high === null) return statement('value.unknown');
      return statement('value.inferred', {
        value: rounded(value.estimate!, decimals),
        low: roundedDown(low, decimals),
        high: roundedUp(high, decimals),
        decimals,
      });
    case 'unknown':
      return statement('value.unknown');
  }
}

function limitStatement({ limits }: SaidValue, decimals: number): Statement {
  const low = limits?.atLeast === undefined ? undefined : roundedDown(limits.atLeast, decimals);
  const high = limits?.atMost === undefined ? undefined : roundedUp(limits.atMost, decimals);
  if (low !== undefined && high !== undefined) return statement('value.between', { low, high, decimals });
  if (high !== undefined) return statement('value.atMost', { value: high, decimals });
  return low === undefined
    ? statement('value.unknown')
    : statement('value.atLeast', { value: low, decimals });
}
