import type { CompiledValue } from '../../scripts/compile/contract.ts';
import { figures } from './direction.ts';
import type { Voice } from './say.ts';

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
 * The one exit of trait values to readers: rounded to the place of their own error, limits and interval ends in the
 * safe direction (outward). An inferred value never leaves without its interval, a bound never without its side.
 */
export function valueText(value: CompiledValue, voice: Voice): ValueText {
  const decimals = decimalsFor(value);
  const print = (number: number) => voice.number(number, decimals);
  const [low, high] = value.interval;
  const ends = {
    low: low === null ? '' : print(roundDown(low, decimals)),
    high: high === null ? '' : print(roundUp(high, decimals)),
  };
  const range = low !== null && high !== null ? figures(`${ends.low}–${ends.high}`, voice.language) : '';
  switch (value.status) {
    case 'measured': {
      const text = measuredText(value, voice, print);
      return { printed: text, spoken: voice.say('value.spoken.measured', { text }), range };
    }
    case 'bounded': {
      const text = limitText(value, voice, decimals);
      return { printed: text, spoken: voice.say('value.spoken.bounded', { text }), range: '' };
    }
    case 'inferred': {
      const places = { value: print(value.estimate!), ...ends };
      return {
        printed: figures(voice.say('value.inferred', places), voice.language),
        spoken: voice.say('value.spoken.inferred', places),
        range,
      };
    }
    case 'unknown':
      return { printed: voice.say('value.unknown'), spoken: voice.say('value.spoken.unknown'), range: '' };
  }
}

function measuredText(value: CompiledValue, voice: Voice, print: (number: number) => string): string {
  const error = halfWidth(value);
  const number = print(value.estimate!);
  return error === undefined
    ? voice.say('value.plain', { value: number })
    : figures(voice.say('value.plusMinus', { value: number, error: print(error) }), voice.language);
}

function limitText(value: CompiledValue, voice: Voice, decimals: number): string {
  const { atLeast, atMost } = value.limits ?? {};
  const low = atLeast === undefined ? undefined : voice.number(roundDown(atLeast, decimals), decimals);
  const high = atMost === undefined ? undefined : voice.number(roundUp(atMost, decimals), decimals);
  if (low !== undefined && high !== undefined) return voice.say('value.between', { low, high });
  return high === undefined
    ? voice.say('value.atLeast', { value: low ?? '' })
    : voice.say('value.atMost', { value: high });
}

/** Half the 95% interval, or undefined where there is none. */
export function halfWidth(value: CompiledValue): number | undefined {
  const [low, high] = value.interval;
  return low === null || high === null ? undefined : (high - low) / 2;
}

/**
 * Decimals that the error supports: the place to which it rounds as one digit, so that half a unit and more is written in
 * whole units; three at most.
 */
export function decimalsFor(value: CompiledValue): number {
  const error = halfWidth(value);
  if (error === undefined || !(error > 0)) return 0;
  return Math.min(3, Math.max(0, -Math.floor(Math.log10(error * 2))));
}

function roundDown(value: number, decimals: number): number {
  return Math.floor(value * 10 ** decimals + 1e-9) / 10 ** decimals;
}

function roundUp(value: number, decimals: number): number {
  return Math.ceil(value * 10 ** decimals - 1e-9) / 10 ** decimals;
}
