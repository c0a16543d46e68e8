import { zeroTwigShare } from '../../tolerance.ts';
import { requireTipsByLabel, rootOf, type DatedTree } from '../../tree/index.ts';
import { requireUsable, type Observation } from '../observation.ts';

/**
 * What the passes run on: the dated tree with its zero twigs merged, so that every branch has a length, and what
 * was observed at each node. Children come before parents and the root is last.
 */
export interface Network {
  readonly parent: Int32Array;
  readonly branchMa: Float64Array;
  readonly firstChild: Int32Array;
  readonly nextSibling: Int32Array;
  readonly lastChild: Int32Array;
  readonly previousSibling: Int32Array;
  /** Time from the root down to each node, million years. */
  readonly sinceRootMa: Float64Array;
  /** Precision of what was observed at a node: 0 for nothing, Infinity for an exact value. */
  readonly ownPrecision: Float64Array;
  /** Mean of what was observed at a node, 0 for nothing. */
  readonly ownMean: Float64Array;
  /** Node here of each node of the tree. */
  readonly nodeOf: Int32Array;
  readonly observations: readonly Observation[];
  /** Node here of each observation. */
  readonly observedAt: Int32Array;
  /** Log-likelihood of the differences between observations that share a node; it holds no rate. */
  readonly sharedLogLikelihood: number;
}

/**
 * Network of a dated tree and the observations of its tips. Throws for an observation outside the tree, two of
 * one taxon, and two exact observations at distance zero, naming them.
 */
export function buildNetwork(tree: DatedTree, observations: readonly Observation[]): Network {
  const merged = mergeZeroTwigs(tree);
  const tips = requireTipsByLabel(tree);
  const count = merged.parent.length;
  const ownPrecision = new Float64Array(count);
  const ownMean = new Float64Array(count);
  const observedAt = new Int32Array(observations.length);
  const exactAt = new Map<number, string>();
  const seen = new Set<string>();
  let sharedLogLikelihood = 0;
  observations.forEach((observation, index) => {
    const { taxon, mean, variance } = observation;
    requireUsable(observation);
    const tip = tips.get(taxon);
    if (tip === undefined) throw new Error(`"${taxon}" is observed but is not a tip of the tree`);
    if (seen.has(taxon)) throw new Error(`"${taxon}" is observed twice`);
    seen.add(taxon);
    const node = merged.nodeOf[tip]!;
    observedAt[index] = node;
    if (variance === 0) {
      const other = exactAt.get(node);
      if (other !== undefined)
        throw new Error(
          `"${other}" and "${taxon}" are exact and no time lies between them: at most one can be exact`,
        );
      exactAt.set(node, taxon);
    }
    const before = ownPrecision[node]!;
    if (before > 0) {
      const spread = 1 / before + variance;
      sharedLogLikelihood -= 0.5 * (Math.log(2 * Math.PI * spread) + (mean - ownMean[node]!) ** 2 / spread);
    }
    const precision = 1 / variance;
    const share = precision === Infinity ? 1 : precision / (before + precision);
    ownMean[node]! += share * (mean - ownMean[node]!);
    ownPrecision[node] = before + precision;
  });
  return { ...merged, ownPrecision, ownMean, observations, observedAt, sharedLogLikelihood };
}

/** Whether two exact observations stand at distance zero, which no network can hold. */
export function hasExactTwins(tree: DatedTree, observations: readonly Observation[]): boolean {
  const { nodeOf } = mergeZeroTwigs(tree);
  const tips = requireTipsByLabel(tree);
  const exact = observations.flatMap(({ taxon, variance }) => {
    const tip = tips.get(taxon);
    return variance === 0 && tip !== undefined ? [nodeOf[tip]!] : [];
  });
  return new Set(exact).size < exact.length;
}

/** The same tree without the branches that take no time: the two ends of each become one node. */
function mergeZeroTwigs(tree: DatedTree) {
  const root = rootOf(tree);
  let youngestMa = Infinity;
  for (let node = 0; node <= root; node++) youngestMa = Math.min(youngestMa, tree.ageMa[node]!);
  const shortest = zeroTwigShare * (tree.ageMa[root]! - youngestMa);
  const nodeOf = new Int32Array(root + 1);
  const kept: number[] = [];
  for (let node = 0; node <= root; node++)
    if (node === root || tree.branchLength[node]! > shortest) nodeOf[node] = kept.push(node) - 1;
  for (let node = root - 1; node >= 0; node--)
    if (tree.branchLength[node]! <= shortest) nodeOf[node] = nodeOf[tree.parent[node]!]!;
  const parent = new Int32Array(kept.length).fill(-1);
  const branchMa = new Float64Array(kept.length);
  const sinceRootMa = new Float64Array(kept.length);
  const firstChild = new Int32Array(kept.length).fill(-1);
  const nextSibling = new Int32Array(kept.length).fill(-1);
  const lastChild = new Int32Array(kept.length).fill(-1);
  const previousSibling = new Int32Array(kept.length).fill(-1);
  for (let node = kept.length - 2; node >= 0; node--) {
    const above = nodeOf[tree.parent[kept[node]!]!]!;
    parent[node] = above;
    branchMa[node] = tree.branchLength[kept[node]!]!;
    sinceRootMa[node] = sinceRootMa[above]! + branchMa[node]!;
    if (firstChild[above] === -1) lastChild[above] = node;
    else previousSibling[firstChild[above]!] = node;
    nextSibling[node] = firstChild[above]!;
    firstChild[above] = node;
  }
  return { parent, branchMa, sinceRootMa, firstChild, nextSibling, lastChild, previousSibling, nodeOf };
}
