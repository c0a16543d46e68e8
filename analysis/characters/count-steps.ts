import { childrenOf, isTip, type Tree } from '../tree/index.ts';
import { scoredTips, type Character } from './character.ts';

/**
 * Fewest changes of state on a tree, any state to any other at the cost of one. On forks in two this is the count of
 * Fitch 1971 (Systematic Zoology 20: 406–416); on forks in more it is exact by Hartigan 1973 (Biometrics 29: 53–65),
 * with every branch of the fork as a lineage of its own, so that a resolution of it may need fewer. The place of the
 * root does not matter. 0 where no tip, or one, is scored. Cost: nodes times states.
 */
export function countSteps(tree: Tree, character: Character): number {
  const best = new Map<number, ReadonlySet<string>>(scoredTips(tree, character));
  let steps = 0;
  for (let node = 0; node < tree.parent.length; node++) {
    if (isTip(tree, node)) continue;
    const below = childrenOf(tree, node).flatMap((child) => best.get(child) ?? []);
    if (below.length === 0) continue;
    const { states, holders } = mostShared(below);
    best.set(node, states);
    steps += below.length - holders;
  }
  return steps;
}

/** States that lie in the most of some sets, and in how many; no states and 0 for no sets. */
export function mostShared(sets: readonly ReadonlySet<string>[]): {
  states: ReadonlySet<string>;
  holders: number;
} {
  const count = new Map<string, number>();
  for (const set of sets) for (const state of set) count.set(state, (count.get(state) ?? 0) + 1);
  const holders = Math.max(0, ...count.values());
  return { states: new Set([...count.keys()].filter((state) => count.get(state) === holders)), holders };
}
