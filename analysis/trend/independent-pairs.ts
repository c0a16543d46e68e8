import { childrenOf, isTip, rootOf, type DatedTree } from '../tree/index.ts';

/** Two tips of a tree and the time that parts them: up from one to their last shared fork, and down to the other. */
export interface TipPair {
  readonly one: string;
  readonly other: string;
  readonly pathMyr: number;
}

/**
 * Pairs of the given tips whose paths on the tree share no branch, so that their differences are independent (Felsenstein
 * 1985, American Naturalist 125: 1–15): from the tips down, what a fork still has unpaired is paired there in the order
 * written. Half of the tips at most; an odd one is left over. Tips that the tree lacks are passed over.
 */
export function independentPairs(tree: DatedTree, taxa: ReadonlySet<string>): TipPair[] {
  const left = new Int32Array(tree.parent.length).fill(-1);
  const pairs: TipPair[] = [];
  for (let node = 0; node <= rootOf(tree); node++) {
    if (isTip(tree, node)) {
      if (taxa.has(tree.label[node]!)) left[node] = node;
      continue;
    }
    for (const child of childrenOf(tree, node)) {
      const tip = left[child]!;
      if (tip === -1) continue;
      const waiting = left[node]!;
      left[node] = waiting === -1 ? tip : -1;
      if (waiting === -1) continue;
      const pathMyr = 2 * tree.ageMa[node]! - tree.ageMa[waiting]! - tree.ageMa[tip]!;
      pairs.push({ one: tree.label[waiting]!, other: tree.label[tip]!, pathMyr });
    }
  }
  return pairs;
}
