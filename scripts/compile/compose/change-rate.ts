import {
  changeLikelihood,
  equalRates,
  findBestChangeRate,
  orderedRates,
  type Character,
} from '../../../analysis/characters/index.ts';
import { isTip, type DatedTree } from '../../../analysis/tree/index.ts';
import type { CompiledCharacter } from '../contract-characters.ts';
import { nodeIds } from './compose-records.ts';

/** The likeliest rate of a character, all its changes alike, and what each fork would have had at that rate. */
export function composeChangeRate(
  tree: DatedTree,
  character: Character,
  { states, ordered }: { states: readonly string[]; ordered: boolean },
): NonNullable<CompiledCharacter['rate']> {
  const ratesOf = ordered ? orderedRates : equalRates;
  const question = { tree, character, states };
  const { rate, logLikelihood, onBound } = findBestChangeRate(question, ratesOf);
  if (onBound === 'no-end') return { perMyr: null, logLikelihood, onBound, forks: [] };
  const { probabilities } = changeLikelihood({ ...question, rates: ratesOf(states.length, rate) });
  const ids = nodeIds(tree.label);
  return {
    perMyr: rate,
    logLikelihood,
    ...(onBound && { onBound }),
    forks: ids.flatMap((node, index) =>
      isTip(tree, index) ? [] : [{ node, shares: [...probabilities[index]!] }],
    ),
  };
}
