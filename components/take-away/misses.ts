import type { CompiledTrait } from '../../scripts/compile/contract.ts';
import type { Voice } from '../messages/say.ts';
import { decimalsFor } from '../messages/value-text.ts';
import { relativesValue } from './relatives-value.ts';

/** A measured animal, worked out from the others as if it had not been found, in the trait's unit. */
export type Miss = Omit<CompiledTrait['leaveOneOut'][number], 'miss'>;

/** How far the method misses on average, what half width it claims, and how often the value lies inside. */
export interface MissSummary {
  miss: number;
  half: number;
  inside: number;
  count: number;
}

/** Summary of misses; undefined for none, or where an interval has no end. */
export function findMissSummary(misses: readonly Miss[]): MissSummary | undefined {
  const count = misses.length;
  if (count === 0) return undefined;
  let [miss, half] = [0, 0];
  for (const { observed, median, interval } of misses) {
    if (interval[0] === null || interval[1] === null) return undefined;
    miss += Math.abs(observed - median) / count;
    half += (interval[1] - interval[0]) / 2 / count;
  }
  return { miss, half, inside: misses.filter(({ inside }) => inside).length, count };
}

/** The leave-one-out sentence of a trait, both numbers to the place that the half width supports. */
export function missSentence({ miss, half, inside, count }: MissSummary, voice: Voice): string {
  const decimals = decimalsFor(relativesValue({ taxon: '', median: 0, interval: [-half, half] }));
  return voice.say('leftOut.sentence', {
    miss: voice.number(miss, decimals),
    half: voice.number(half, decimals),
    inside,
    count,
  });
}
