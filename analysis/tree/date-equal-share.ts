import { datedTree, describeNode, placeTips, type TipAges } from './dated.ts';
import { isTip, rootOf, type DatedTree, type Tree } from './tree.ts';

/**
 * Dates the forks by equal shares below a root of given age: the forks on the way from a dated fork to its oldest
 * tip stand at equal steps, the longest such way first (the sharing rule of Ruta, Wagner and Coates 2006,
 * Proceedings of the Royal Society B 273: 2107–2111, with the root fixed). A tip older than the root throws.
 */
export function dateByEqualShare(tree: Tree, tipAgesMa: TipAges, rootAgeMa: number): DatedTree {
  const ageMa = placeTips(tree, tipAgesMa);
  const root = rootOf(tree);
  const { oldestMa, steps, towards } = oldestTips(tree, ageMa);
  if (!(rootAgeMa >= oldestMa[root]!)) {
    const oldest = followToTip(tree, towards, root);
    throw new Error(
      `root age must be at least ${oldestMa[root]} Ma, the age of ${describeNode(tree, oldest)}, got ${rootAgeMa}`,
    );
  }
  if (!isTip(tree, root)) ageMa[root] = rootAgeMa;
  for (let node = root - 1; node >= 0; node--) {
    if (!Number.isNaN(ageMa[node])) continue;
    const topMa = ageMa[tree.parent[node]!]!;
    const shareMa = (topMa - oldestMa[node]!) / (steps[node]! + 1);
    let ageHere = topMa;
    for (let fork = node; !isTip(tree, fork); fork = towards[fork]!) {
      ageHere -= shareMa;
      ageMa[fork] = Math.max(ageHere, oldestMa[node]!);
    }
  }
  return datedTree(tree, ageMa);
}

/** For each node the age of its oldest tip, the number of branches to it (the most where tips tie), and the child towards it. */
function oldestTips(tree: Tree, ageMa: Float64Array) {
  const count = tree.parent.length;
  const oldestMa = ageMa.slice();
  for (let node = 0; node < count; node++) if (Number.isNaN(oldestMa[node])) oldestMa[node] = -1;
  const steps = new Int32Array(count);
  const towards = new Int32Array(count).fill(-1);
  for (let node = 0; node < count - 1; node++) {
    const above = tree.parent[node]!;
    const longer = oldestMa[node] === oldestMa[above] && steps[node]! + 1 > steps[above]!;
    if (oldestMa[node]! <= oldestMa[above]! && !longer) continue;
    oldestMa[above] = oldestMa[node]!;
    steps[above] = steps[node]! + 1;
    towards[above] = node;
  }
  return { oldestMa, steps, towards };
}

function followToTip(tree: Tree, towards: Int32Array, from: number): number {
  let node = from;
  while (!isTip(tree, node)) node = towards[node]!;
  return node;
}
