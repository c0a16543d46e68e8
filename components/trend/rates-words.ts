import type { LineageView } from '../lineage/view.ts';
import type { Voice } from '../messages/say.ts';
import type { RateWords } from './compose-rate-chart.ts';

/** The words on a chart of rates. */
export function rateWords(voice: Voice): RateWords {
  return {
    across: voice.say('rates.across'),
    up: voice.say('rates.up'),
    guides: [voice.say('rates.steady'), voice.say('rates.wandering'), voice.say('rates.still')],
    number: (value) => plainNumber(value, voice),
  };
}

/** A round number with no more decimals than it has. */
export function plainNumber(value: number, voice: Voice): string {
  return voice.number(value, Math.max(0, -Math.floor(Math.log10(value) + 1e-9)));
}

/** The rate of the fitted line in darwins with the time it runs over, in one sentence; empty where there is no line or no length. */
export function ratesSentence(view: LineageView): string {
  const { trait, voice } = view;
  const slope = trait.trend?.rows[0]?.slope;
  const line = trait.trend?.line ?? [];
  const [first, last] = [line[0], line.at(-1)];
  if (!trait.rates || !slope || !first || !last || !(first.at > last.at)) return '';
  const print = (value: number) => voice.number(value, 3);
  const [low, high] = slope.interval as [number, number];
  return voice.say('rates.fitted', {
    trait: view.text(trait.label),
    rate: print(slope.perMyr),
    myr: voice.number(first.at - last.at, 0),
    low: print(Math.floor(low * 1000 + 1e-9) / 1000),
    high: print(Math.ceil(high * 1000 - 1e-9) / 1000),
  });
}
