import { childrenOf, isTip, rootOf, type Tree } from '../tree/index.ts';
import { scoredTips, type Character } from './character.ts';
import { changeProbabilities, type ChangeRates } from './change-rates.ts';

/** What is asked: states in the order of the rates, and the share of each at the root, all alike if left out. */
export interface ChangeQuestion {
  /** A tree with branches in million years. */
  readonly tree: Tree;
  readonly character: Character;
  readonly states: readonly string[];
  readonly rates: ChangeRates;
  readonly rootShares?: readonly number[];
}

/** What rates of change say of a character on a tree. */
export interface ChangeAnswer {
  readonly logLikelihood: number;
  /** Probability of each state at each node, all else summed over. */
  readonly probabilities: readonly Float64Array[];
  /**
   * The most likely states at all forks together: a state a node, by its place in the list, and the log-likelihood of these
   * alone. What an unsure tip turns out to be is summed over; its state here is the likeliest after the fork above.
   */
  readonly bestHistory: { readonly stateAt: Int32Array; readonly logLikelihood: number };
}

/**
 * Likelihood of a discrete character and the states at the forks: summed over all histories by passes up and down the tree
 * (Felsenstein 1981, Journal of Molecular Evolution 17: 368–376; marginal as in Yang, Kumar and Nei 1995, Genetics 141:
 * 1641–1650), and the most likely single one (Pupko and others 2000, Molecular Biology and Evolution 17: 890–896). Unsure
 * and unscored tips may have any of their states; nothing corrects for characters that were left out because they do
 * not vary. Cost: nodes times squared states. −Infinity, and probabilities of NaN,
 * where the rates allow no history. Throws for a state that is not listed.
 */
export function changeLikelihood(question: ChangeQuestion): ChangeAnswer {
  const { tree } = question;
  const { logLikelihood, seen, branches, below, shares } = sumHistories(question);
  return {
    logLikelihood,
    probabilities: passDown(tree, below, branches, shares),
    bestHistory: findBestHistory(tree, seen, branches, shares),
  };
}

/** The likelihood of a discrete character alone, by one pass up the tree; as `changeLikelihood` has it. */
export function changeLogLikelihood(question: ChangeQuestion): number {
  return sumHistories(question).logLikelihood;
}

/** All histories summed by one pass up the tree. */
function sumHistories(question: ChangeQuestion) {
  const { tree, states } = question;
  const shares = question.rootShares ?? states.map(() => 1 / states.length);
  const seen = seenStates(question);
  const branches = Array.from(tree.branchLength, (length, node) =>
    node === rootOf(tree) ? [] : changeProbabilities(question.rates, length),
  );
  const { below, logScale } = passUp(tree, seen, branches);
  const atRoot = shares.reduce((sum, share, state) => sum + share * below[rootOf(tree)]![state]!, 0);
  return { logLikelihood: logScale + Math.log(atRoot), seen, branches, below, shares };
}

/** For each node, 1 for a state that it may have and 0 for one that it may not. */
function seenStates({ tree, character, states }: ChangeQuestion): Float64Array[] {
  const seen = Array.from(tree.parent, () => new Float64Array(states.length).fill(1));
  for (const [tip, own] of scoredTips(tree, character)) {
    for (const state of own)
      if (!states.includes(state)) throw new Error(`state "${state}" is not one of ${states.join(', ')}`);
    states.forEach((state, k) => (seen[tip]![k] = Number(own.has(state))));
  }
  return seen;
}

/** Probability of what is under each node given its state, to a scale: each node's largest is 1, and the logs add up. */
function passUp(tree: Tree, seen: readonly Float64Array[], branches: readonly (readonly Float64Array[])[]) {
  const below = seen.map((states) => states.slice());
  let logScale = 0;
  for (let node = 0; node < tree.parent.length; node++) {
    const own = below[node]!;
    const largest = Math.max(...own);
    if (largest > 0) {
      logScale += Math.log(largest);
      for (let state = 0; state < own.length; state++) own[state]! /= largest;
    }
    if (node === rootOf(tree)) break;
    const above = below[tree.parent[node]!]!;
    for (let state = 0; state < above.length; state++) above[state]! *= reach(branches[node]![state]!, own);
  }
  return { below, logScale };
}

/** Probability of what a state leads to: over every state at the other end. */
function reach(row: Float64Array, then: Float64Array): number {
  return row.reduce((sum, probability, state) => sum + probability * then[state]!, 0);
}

/** Probabilities of each node's states: what is under it, and what the rest of the tree says of it, other children first. */
function passDown(
  tree: Tree,
  below: readonly Float64Array[],
  branches: readonly (readonly Float64Array[])[],
  shares: readonly number[],
): Float64Array[] {
  const rest = below.map((states) => new Float64Array(states.length));
  rest[rootOf(tree)]!.set(shares);
  for (let node = rootOf(tree); node >= 0; node--) {
    const children = childrenOf(tree, node);
    const rising = children.map((child) => branches[child]!.map((row) => reach(row, below[child]!)));
    children.forEach((child, k) => {
      const others = rest[node]!.map((outside, state) =>
        rising.reduce((all, each, j) => (j === k ? all : all * each[state]!), outside),
      );
      const falling = rest[child]!.map((_, state) =>
        others.reduce((sum, other, from) => sum + other * branches[child]![from]![state]!, 0),
      );
      rest[child]!.set(toShares(falling));
    });
  }
  return below.map((own, node) => toShares(own.map((value, state) => value * rest[node]![state]!)));
}

function toShares(values: Float64Array): Float64Array {
  const sum = values.reduce((all, value) => all + value, 0);
  return values.map((value) => value / sum);
}

/** The most likely forks: the best under every node for each state above it, then read off from the root down. */
function findBestHistory(
  tree: Tree,
  seen: readonly Float64Array[],
  branches: readonly (readonly Float64Array[])[],
  shares: readonly number[],
): ChangeAnswer['bestHistory'] {
  const best = seen.map((states) => states.map(Math.log));
  const choice = seen.map((states) => new Int32Array(states.length));
  const root = rootOf(tree);
  for (let node = 0; node < root; node++) {
    const above = best[tree.parent[node]!]!;
    for (let state = 0; state < above.length; state++) {
      const ways = best[node]!.map((own, to) => Math.log(branches[node]![state]![to]!) + own);
      choice[node]![state] = placeOfLargest(ways);
      above[state]! += isTip(tree, node)
        ? Math.log(reach(branches[node]![state]!, seen[node]!))
        : ways[choice[node]![state]!]!;
    }
  }
  const whole = best[root]!.map((own, state) => Math.log(shares[state]!) + own);
  const stateAt = new Int32Array(root + 1);
  stateAt[root] = placeOfLargest(whole);
  for (let node = root - 1; node >= 0; node--) stateAt[node] = choice[node]![stateAt[tree.parent[node]!]!]!;
  return { stateAt, logLikelihood: whole[stateAt[root]!]! };
}

function placeOfLargest(values: Float64Array): number {
  return values.reduce((best, value, k) => (value > values[best]! ? k : best), 0);
}
