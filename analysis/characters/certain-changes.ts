import { rootOf, type Tree } from '../tree/index.ts';
import type { Character } from './character.ts';
import { cheapestHistories, type ChangeCost } from './least-cost.ts';

/** A change on the branch that leads to a node; several states where the shortest histories differ in them. */
export interface CertainChange {
  readonly node: number;
  readonly from: readonly string[];
  readonly to: readonly string[];
}

/** Costs closer together than this are one. */
const sameCost = 1e-9;

/**
 * Fewest steps of a character on a tree, and the branches on which every history of so few steps, by the costs of change, has one. A branch that
 * changes in some of them only is left out: which of two branches it was, the tree does not say. Nodes in the order of
 * the tree. Throws for a state that is not listed.
 */
export function certainChanges(
  tree: Tree,
  character: Character,
  { states, cost }: { readonly states: readonly string[]; readonly cost: ChangeCost },
): { readonly steps: number; readonly changes: readonly CertainChange[] } {
  const { cost: steps, statesAt, costBelow } = cheapestHistories(tree, character, { states, cost });
  const changes: CertainChange[] = [];
  for (let node = 0; node < rootOf(tree); node++) {
    const pairs = statesAt[tree.parent[node]!]!.flatMap((from) => {
      const above = states.indexOf(from);
      const costs = states.map((_, below) => cost(above, below) + costBelow[node]![below]!);
      const least = Math.min(...costs);
      return states.filter((_, below) => costs[below]! <= least + sameCost).map((to) => ({ from, to }));
    });
    if (pairs.some(({ from, to }) => from === to)) continue;
    const inOrder = (side: 'from' | 'to') =>
      states.filter((state) => pairs.some((pair) => pair[side] === state));
    changes.push({ node, from: inOrder('from'), to: inOrder('to') });
  }
  return { steps, changes };
}
