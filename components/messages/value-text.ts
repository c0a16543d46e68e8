import {
  decimalsOfError,
  halfWidthOf,
  roundedDown,
  roundedUp,
  valueStatement,
} from '../../analysis/statements/index.ts';
import type { CompiledValue } from '../../scripts/compile/contract.ts';
import { figures } from './direction.ts';
import type { Voice } from './say.ts';
import { sayStatement } from './say-statement.ts';

/** A value as it is printed and as it is read aloud. */
export interface ValueText {
  /** `14 ± 2`, `at least 31`, `41 [30–53]`, `not known`. */
  printed: string;
  /** The same in words that need no mark beside them. */
  spoken: string;
  /** The 95% interval alone, rounded outward, or nothing. */
  range: string;
}

/**
 * The one exit of trait values to readers: their statement in words, rounded to the place of their own error, limits and
 * interval ends in the safe direction (outward). An inferred value never leaves without its interval, a bound never without
 * its side.
 */
export function valueText(value: CompiledValue, voice: Voice): ValueText {
  const said = valueStatement(value);
  const printed = sayStatement(said, voice);
  const spoken = sayStatement({ code: `value.spoken.${value.status}`, args: said.args }, voice, {
    text: printed,
  });
  return { printed, spoken, range: value.status === 'bounded' ? '' : rangeText(value, voice) };
}

function rangeText({ interval }: CompiledValue, voice: Voice): string {
  const [low, high] = interval;
  if (low === null || high === null) return '';
  const decimals = decimalsOfError(halfWidthOf(interval));
  const [from, to] = [roundedDown(low, decimals), roundedUp(high, decimals)];
  return figures(`${voice.number(from, decimals)}–${voice.number(to, decimals)}`, voice.language);
}
