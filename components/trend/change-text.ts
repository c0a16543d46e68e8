import type { CompiledTrait } from '../../scripts/compile/contract.ts';
import type { CompiledTrend } from '../../scripts/compile/contract.ts';
import { figures } from '../messages/direction.ts';
import { isMessage, type Voice } from '../messages/say.ts';

/** A slope as it is printed: rounded to two digits of its own error, the ends of its range outward, signs taken off or kept. */
export interface ChangeText {
  change: string;
  low: string;
  high: string;
  /** Decimals that the error supports. */
  decimals: number;
}

type Slope = NonNullable<CompiledTrend['rows'][number]['slope']>;
type Scaled = Pick<CompiledTrait, 'scale' | 'unit'>;

/**
 * A change a million years in the words of its scale: points of a share, per cent of a length on log scale. `turned` takes
 * a fall as a positive amount, for a sentence that says ‘falls’ itself.
 */
export function changeText(
  slope: Pick<Slope, 'perMyr' | 'interval'>,
  trait: Scaled,
  voice: Voice,
  turned = false,
): ChangeText {
  const sign = turned ? -1 : 1;
  const of = (value: number) => sign * amount(value, trait.scale);
  const ends = [of(slope.interval[0]!), of(slope.interval[1]!)].sort((a, b) => a - b) as [number, number];
  const decimals = twoDigits((ends[1] - ends[0]) / 2);
  const factor = 10 ** decimals;
  const print = (value: number) => voice.number(value, decimals);
  return {
    change: inUnit(print(of(slope.perMyr)), trait, voice),
    low: print(Math.floor(ends[0] * factor + 1e-9) / factor),
    high: print(Math.ceil(ends[1] * factor - 1e-9) / factor),
    decimals,
  };
}

/** Natural logs become per cent; the rest stays in its unit. */
function amount(value: number, scale: CompiledTrait['scale']): number {
  return scale === 'log' ? 100 * Math.expm1(value) : value;
}

function twoDigits(half: number): number {
  return half > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(half)))) : 2;
}

const plainUnits = ['percent', 'mm', 'degrees'] as const;

function inUnit(value: string, { scale, unit }: Scaled, voice: Voice): string {
  if (scale === 'log') return voice.say('change.by.log', { value });
  if (scale === 'logit') return voice.say('change.by.logit', { value });
  const known = plainUnits.find((each) => each === unit);
  return voice.say(known ? `change.by.${known}` : 'change.by.plain', { value });
}

/** A probability as it is printed: two digits, and never a bare 0. */
export function probabilityText(probability: number, voice: Voice): string {
  if (probability < 0.001) return figures(`< ${voice.number(0.001, 3)}`, voice.language);
  return voice.number(probability, probability < 0.1 ? 3 : 2);
}

/** A rule of dating in words, or its code where it has none. */
export function datingText(rule: string, voice: Voice): string {
  const key = `dating.${rule}`;
  return isMessage(key) ? voice.say(key) : rule;
}
