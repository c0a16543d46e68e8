import { roundingShare } from '../tolerance.ts';
import { isTip, rootOf, tipsOf, type DatedTree, type Tree } from './tree.ts';

/** Age in Ma of each tip by its label. */
export type TipAges = ReadonlyMap<string, number>;

/** Ages at the tips, NaN at the forks. Throws where a tip has no age or an age below 0, naming the tips. */
export function placeTips(tree: Tree, tipAgesMa: TipAges): Float64Array {
  const ageMa = new Float64Array(tree.parent.length).fill(NaN);
  const without: string[] = [];
  for (const tip of tipsOf(tree)) {
    const label = tree.label[tip]!;
    const age = tipAgesMa.get(label);
    if (age === undefined || Number.isNaN(age)) without.push(label);
    else if (age < 0 || age === Infinity)
      throw new Error(`age of "${label}" must be 0 Ma or more, got ${age}`);
    else ageMa[tip] = age;
  }
  if (without.length > 0)
    throw new Error(`no age for the tips ${without.map((label) => `"${label}"`).join(', ')}`);
  return ageMa;
}

/**
 * Tree with branch lengths, in million years, from the ages of its nodes. Throws where a node is older than its parent;
 * by no more than rounding it is taken as of the same age.
 */
export function datedTree(tree: Tree, ageMa: Float64Array): DatedTree {
  const root = rootOf(tree);
  const branchLength = new Float64Array(root + 1);
  for (let node = 0; node < root; node++) {
    const length = ageMa[tree.parent[node]!]! - ageMa[node]!;
    if (!(length >= -roundingShare * ageMa[root]!))
      throw new Error(
        `${describeNode(tree, node)} is older than the fork above it by ${-length} million years`,
      );
    branchLength[node] = Math.max(0, length);
  }
  return { ...tree, branchLength, ageMa };
}

/** Words for a node in an error: a tip by its name, a fork by two tips that meet at it. */
export function describeNode(tree: Tree, node: number): string {
  if (isTip(tree, node)) return `tip "${tree.label[node]}"`;
  const first = firstTipUnder(tree, tree.firstChild[node]!);
  let last = tree.firstChild[node]!;
  while (tree.nextSibling[last] !== -1) last = tree.nextSibling[last]!;
  return `the fork of "${first}" and "${firstTipUnder(tree, last)}"`;
}

function firstTipUnder(tree: Tree, child: number): string {
  let node = child;
  while (!isTip(tree, node)) node = tree.firstChild[node]!;
  return tree.label[node]!;
}
