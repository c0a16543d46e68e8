import { rounded } from '../../analysis/statements/index.ts';
import type { CompiledSection } from '../../scripts/compile/contract.ts';
import { figures } from '../messages/direction.ts';
import { plainNumber } from '../trend/rates-words.ts';
import type { SectionView } from './section-view.ts';

type Rates = NonNullable<CompiledSection['rates']>;

/** The slope of log rate on log time in words, with what chance alone and a walk would give; one sentence each. */
export function slopeWords(rates: Rates, { view: { voice } }: SectionView): string[] {
  const print = (value: number) => voice.number(rounded(value, 2), 2);
  const places = ({ middle, range: [low, high] }: Rates['still']) => ({
    middle: print(middle),
    low: print(low!),
    high: print(high!),
  });
  const { slope } = rates.line;
  const [low, high] = rates.still.range as [number, number];
  return [
    voice.say(slope < 0 ? 'section.rates.line' : 'section.rates.lineUp', { slope: print(slope) }),
    voice.say('section.rates.still', places(rates.still)),
    voice.say(slope >= low && slope <= high ? 'section.rates.inside' : 'section.rates.outside'),
    ...(rates.walk ? [voice.say('section.rates.walk', places(rates.walk))] : []),
  ];
}

/** One row of the table of rates, in words. */
export interface RateRow {
  time: string;
  pairs: string;
  middle: string;
  extent: string;
}

/** Rates by the time that they span; two digits a number, because more would be made up. */
export function rateRows({ classes }: Rates, { view: { voice, language } }: SectionView): RateRow[] {
  const print = (value: number) => voice.number(value, decimalsOf(value));
  const range = (from: number, to: number) => figures(`${print(from)}–${print(to)}`, language);
  return classes.map(({ fromMyr, toMyr, pairs, middle, least, greatest }) => ({
    time: figures(`${plainNumber(fromMyr, voice)}–${plainNumber(toMyr, voice)}`, language),
    pairs: voice.number(pairs, 0),
    middle: print(middle),
    extent: range(least, greatest),
  }));
}

/** Decimals of two digits that say something; none from ten up. */
function decimalsOf(value: number): number {
  return value > 0 ? Math.min(4, Math.max(0, 1 - Math.floor(Math.log10(value)))) : 0;
}
