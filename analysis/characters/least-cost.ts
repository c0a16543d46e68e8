import { childrenOf, isTip, rootOf, type Tree } from '../tree/index.ts';
import { scoredTips, type Character } from './character.ts';

/** Cost of a change from the state above to the state below, both by their place in the list of states; Infinity forbids it. */
export type ChangeCost = (above: number, below: number) => number;

/** Any change costs one. */
export const unorderedCost: ChangeCost = (above, below) => Number(above !== below);

/** A change costs as many steps as states lie between, in the order of the list (Farris 1970, Systematic Zoology 19: 83–92). */
export const orderedCost: ChangeCost = (above, below) => Math.abs(above - below);

/** As ordered, but no state goes back to one before it (Camin and Sokal 1965, Evolution 19: 311–326). */
export const irreversibleCost: ChangeCost = (above, below) => (below < above ? Infinity : below - above);

/** The cheapest histories of one character on a tree. */
export interface CheapestHistories {
  /** Infinity where the costs forbid every history. */
  readonly cost: number;
  /** How many choices of states at the forks cost so little. */
  readonly count: number;
  /** States of each node in any of them, in the order of the list; those that a tip may have for a tip. */
  readonly statesAt: readonly (readonly string[])[];
  /** Least cost of all that is under a node, for each state that the node may have. */
  readonly costBelow: readonly Float64Array[];
}

/** Costs closer together than this are one: sums of the same costs in another order. */
const sameCost = 1e-9;

/**
 * The cheapest histories by costs of change, with unsure and unscored tips taking whichever state costs least (Sankoff 1975,
 * SIAM Journal on Applied Mathematics 28: 35–42). Forks in more than two are taken as they are. Cost: nodes times squared
 * states. Throws for a state that is not listed.
 */
export function cheapestHistories(
  tree: Tree,
  character: Character,
  { states, cost }: { readonly states: readonly string[]; readonly cost: ChangeCost },
): CheapestHistories {
  const { costBelow, ways } = passUp(tree, allowedStates(tree, character, states), cost);
  const root = costBelow[rootOf(tree)]!;
  const least = Math.min(...root);
  const total = passDown(tree, costBelow, cost);
  const isLeast = (value: number) => value <= least + sameCost;
  return {
    cost: least,
    count:
      least === Infinity
        ? 0
        : sumOver(states, (state) => (isLeast(root[state]!) ? ways[rootOf(tree)]![state]! : 0)),
    statesAt: total.map((costs) => states.filter((_, state) => least < Infinity && isLeast(costs[state]!))),
    costBelow,
  };
}

/** For each node, 0 for a state that it may have and Infinity for one that it may not. */
function allowedStates(tree: Tree, character: Character, states: readonly string[]): Float64Array[] {
  const allowed = Array.from(tree.parent, () => new Float64Array(states.length));
  for (const [tip, own] of scoredTips(tree, character)) {
    for (const state of own)
      if (!states.includes(state)) throw new Error(`state "${state}" is not one of ${states.join(', ')}`);
    states.forEach((state, k) => (allowed[tip]![k] = own.has(state) ? 0 : Infinity));
  }
  return allowed;
}

/** Least costs under every node by its state, and in how many ways its forks reach them. */
function passUp(tree: Tree, allowed: readonly Float64Array[], cost: ChangeCost) {
  const costBelow = allowed.map((costs) => costs.slice());
  const ways = allowed.map((costs) => new Float64Array(costs.length).fill(1));
  for (let node = 0; node < tree.parent.length - 1; node++) {
    const above = tree.parent[node]!;
    for (let state = 0; state < costBelow[above]!.length; state++) {
      const branch = costsOfBranch(costBelow[node]!, state, cost);
      const least = Math.min(...branch);
      costBelow[above]![state]! += least;
      // what a tip turns out to be is no choice of the forks
      if (!isTip(tree, node))
        ways[above]![state]! *= branch.reduce(
          (sum, each, k) => sum + (each <= least + sameCost ? ways[node]![k]! : 0),
          0,
        );
    }
  }
  return { costBelow, ways };
}

/** Least cost of a whole history in which a node has a state, for every node and state. */
function passDown(tree: Tree, costBelow: readonly Float64Array[], cost: ChangeCost): Float64Array[] {
  const total = costBelow.map((costs) => costs.slice());
  for (let node = tree.parent.length - 1; node >= 0; node--)
    for (const child of childrenOf(tree, node)) {
      const below = costBelow[child]!;
      total[child] = below.map((own, state) =>
        Math.min(
          ...total[node]!.map((whole, above) =>
            whole === Infinity
              ? Infinity
              : whole - Math.min(...costsOfBranch(below, above, cost)) + cost(above, state) + own,
          ),
        ),
      );
    }
  return total;
}

/** Cost of a branch and what is under it by the state at its lower end, from a state at its upper end. */
function costsOfBranch(below: Float64Array, above: number, cost: ChangeCost): Float64Array {
  return below.map((own, state) => own + cost(above, state));
}

function sumOver(states: readonly string[], of: (state: number) => number): number {
  return states.reduce((sum, _, state) => sum + of(state), 0);
}
