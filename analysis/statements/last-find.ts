import { decimalsOfError, rounded, roundedDown } from './rounding.ts';
import { statement, type Statement } from './statement.ts';

/** When an animal was last found, and how long it may have lived on at a confidence; ages in Ma. */
export interface SaidLastFind {
  readonly last: number;
  readonly beds: number;
  readonly youngestMa: number;
  readonly level: number;
}

/**
 * How long an animal may have lived past its last find: to an age rounded to the younger side, as exact as what lies between
 * the two allows, or to the present, where the finds set no end before it that would be printed.
 */
export function lastFindStatement({ last, beds, youngestMa, level }: SaidLastFind): Statement {
  const known = { beds, percent: rounded(100 * level, 0), percentDecimals: 0 };
  if (!(youngestMa > 0)) return statement('lastFind.open', known);
  const decimals = decimalsOfError(last - youngestMa);
  const youngest = roundedDown(youngestMa, decimals);
  if (youngest === 0) return statement('lastFind.open', known);
  return statement('lastFind.limit', { ...known, youngest, decimals });
}
