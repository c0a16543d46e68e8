import { datedTree, describeNode, placeTips, type TipAges } from './dated.ts';
import { isTip, rootOf, type DatedTree, type Tree } from './tree.ts';

/**
 * Dates each fork as young as its descendants allow with every branch at least so long (the rule of Laurin 2004,
 * Systematic Biology 53: 594–622, from memory). The root takes the age given, or the youngest possible.
 */
export function dateByMinimumBranch(
  tree: Tree,
  tipAgesMa: TipAges,
  options: { minimumMa: number; rootAgeMa?: number | undefined },
): DatedTree {
  const { minimumMa, rootAgeMa } = options;
  if (!(minimumMa >= 0)) throw new Error(`minimum branch must be 0 million years or more, got ${minimumMa}`);
  const ageMa = placeTips(tree, tipAgesMa);
  const root = rootOf(tree);
  let binding = root;
  for (let node = 0; node < root; node++) {
    const above = tree.parent[node]!;
    const leastMa = ageMa[node]! + minimumMa;
    if (ageMa[above]! >= leastMa) continue;
    ageMa[above] = leastMa;
    if (above === root) binding = node;
  }
  if (rootAgeMa !== undefined && !isTip(tree, root)) {
    if (!(rootAgeMa >= ageMa[root]!))
      throw new Error(
        `root age must be at least ${ageMa[root]} Ma, one minimum branch above ${describeNode(tree, binding)}, got ${rootAgeMa}`,
      );
    ageMa[root] = rootAgeMa;
  }
  return datedTree(tree, ageMa);
}
