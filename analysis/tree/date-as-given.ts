import { roundingShare } from '../tolerance.ts';
import { datedTree, describeNode } from './dated.ts';
import { rootOf, type DatedTree, type Tree } from './tree.ts';

/**
 * Dates the nodes by the branch lengths as written, in million years, down from the root's age; without one the
 * youngest tip stands at 0 Ma. Throws, naming the tips, for a branch that is missing or negative and for a tip in the future.
 */
export function dateAsGiven(tree: Tree, rootAgeMa?: number): DatedTree {
  const root = rootOf(tree);
  const depthMa = new Float64Array(root + 1);
  let deepest = root;
  for (let node = root - 1; node >= 0; node--) {
    const length = tree.branchLength[node]!;
    if (Number.isNaN(length)) throw new Error(`${describeNode(tree, node)} has no branch length`);
    if (length < 0) throw new Error(`${describeNode(tree, node)} has a negative branch length, ${length}`);
    depthMa[node] = depthMa[tree.parent[node]!]! + length;
    if (depthMa[node]! > depthMa[deepest]!) deepest = node;
  }
  const topMa = rootAgeMa ?? depthMa[deepest]!;
  if (!(topMa >= depthMa[deepest]! * (1 - roundingShare)))
    throw new Error(
      `root age must be at least ${depthMa[deepest]} Ma, the way down to ${describeNode(tree, deepest)}, got ${rootAgeMa}`,
    );
  return datedTree(
    tree,
    depthMa.map((depth) => Math.max(0, topMa - depth)),
  );
}

/** Tips whose age on a dated tree lies outside the ages recorded for them by more than a tolerance, with both ages. */
export function findMisplacedTips(
  tree: DatedTree,
  recordedMa: ReadonlyMap<string, { readonly from: number; readonly to: number }>,
  toleranceMa = 1e-6,
): { label: string; treeMa: number; fromMa: number; toMa: number }[] {
  const misplaced = [];
  for (let node = 0; node < tree.parent.length; node++) {
    const label = tree.label[node]!;
    const recorded = tree.firstChild[node] === -1 ? recordedMa.get(label) : undefined;
    if (!recorded) continue;
    const treeMa = tree.ageMa[node]!;
    if (treeMa > recorded.from + toleranceMa || treeMa < recorded.to - toleranceMa)
      misplaced.push({ label, treeMa, fromMa: recorded.from, toMa: recorded.to });
  }
  return misplaced;
}
