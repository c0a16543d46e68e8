import type { LineageView } from '../lineage/view.ts';

/** The rate of the fitted line in darwins with the time it runs over, in one sentence; empty where there is no line or no length. */
export function ratesSentence(view: LineageView): string {
  const { trait, voice } = view;
  const slope = trait.trend?.rows[0]?.slope;
  const line = trait.trend?.line ?? [];
  const [first, last] = [line[0], line.at(-1)];
  if (!trait.rates || !slope || !first || !last || !(first.at > last.at)) return '';
  const print = (value: number) => voice.number(value, 3).replace('-', '\u2212');
  const [low, high] = slope.interval as [number, number];
  return voice.say('rates.fitted', {
    trait: view.text(trait.label),
    rate: print(slope.perMyr),
    myr: voice.number(first.at - last.at, 0),
    low: print(Math.floor(low * 1000 + 1e-9) / 1000),
    high: print(Math.ceil(high * 1000 - 1e-9) / 1000),
  });
}
