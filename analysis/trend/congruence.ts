import type { Random } from '../random/index.ts';
import { childrenOf, isTip, requireTipsByLabel, rootOf, type Tree } from '../tree/index.ts';

/** First and last find of a taxon, Ma. */
export interface FindRange {
  readonly firstMa: number;
  readonly lastMa: number;
}

/** A stretch of time in which a branch must have lived, by the tree, and nothing of it has been found. */
export interface GhostRange {
  readonly node: number;
  readonly fromMa: number;
  readonly toMa: number;
}

/** How well a tree agrees with the order of finds. Indices are NaN where what they divide by is 0. */
export interface Congruence {
  readonly ghosts: readonly GhostRange[];
  /** Sum of the ghost ranges: minimum implied gap. */
  readonly gapMyr: number;
  /** Stratigraphic consistency: share of forks, the root left out, whose oldest find is no older than their sister's. */
  readonly consistency: number;
  /** Relative completeness, percent, and negative where gaps are longer than finds. */
  readonly completeness: number;
  /** Gap excess ratio: 1 for the least gap that any tree could imply, 0 for the most. */
  readonly gapExcessRatio: number;
  /** Least gap of any tree over the gap of this one. */
  readonly gapRatio: number;
}

/**
 * Ghost ranges and indices of a tree against first and last finds: consistency (Huelsenbeck 1994, Paleobiology 20: 470–
 * 483), relative completeness (Benton and Storrs 1994, Geology 22: 111–114), gap excess ratio (Wills 1999, Systematic
 * Biology 48: 559–580). Every tip needs a range; the error names those without.
 */
export function congruenceOf(tree: Tree, ranges: ReadonlyMap<string, FindRange>): Congruence {
  const firstMa = firstFinds(tree, ranges);
  const ghosts = ghostRanges(tree, firstMa);
  const gapMyr = ghosts.reduce((sum, { fromMa, toMa }) => sum + fromMa - toMa, 0);
  const tips = [...requireTipsByLabel(tree).keys()].map((label) => ranges.get(label)!);
  const oldestMa = Math.max(...tips.map((range) => range.firstMa));
  const leastMyr = oldestMa - Math.min(...tips.map((range) => range.firstMa));
  const mostMyr = tips.reduce((sum, range) => sum + oldestMa - range.firstMa, 0);
  const foundMyr = tips.reduce((sum, range) => sum + range.firstMa - range.lastMa, 0);
  return {
    ghosts,
    gapMyr,
    consistency: consistencyOf(tree, firstMa),
    completeness: 100 * (1 - gapMyr / foundMyr),
    gapExcessRatio: 1 - (gapMyr - leastMyr) / (mostMyr - leastMyr),
    gapRatio: leastMyr / gapMyr,
  };
}

/** Age of the oldest find under each node. */
function firstFinds(tree: Tree, ranges: ReadonlyMap<string, FindRange>): Float64Array {
  const firstMa = new Float64Array(tree.parent.length).fill(-Infinity);
  const without: string[] = [];
  for (const [label, tip] of requireTipsByLabel(tree)) {
    const range = ranges.get(label);
    if (!range) without.push(`"${label}"`);
    else if (!(range.firstMa >= range.lastMa))
      throw new Error(
        `first find of "${label}" must not be younger than its last, got ${range.firstMa} and ${range.lastMa}`,
      );
    else firstMa[tip] = range.firstMa;
  }
  if (without.length > 0) throw new Error(`no finds for the tips ${without.join(', ')}`);
  for (let node = 0; node < rootOf(tree); node++) {
    const above = tree.parent[node]!;
    firstMa[above] = Math.max(firstMa[above]!, firstMa[node]!);
  }
  return firstMa;
}

function ghostRanges(tree: Tree, firstMa: Float64Array): GhostRange[] {
  const ghosts: GhostRange[] = [];
  for (let node = rootOf(tree) - 1; node >= 0; node--) {
    const fromMa = firstMa[tree.parent[node]!]!;
    if (fromMa > firstMa[node]!) ghosts.push({ node, fromMa, toMa: firstMa[node]! });
  }
  return ghosts;
}

function consistencyOf(tree: Tree, firstMa: Float64Array): number {
  let [consistent, all] = [0, 0];
  for (let node = 0; node < rootOf(tree); node++) {
    if (isTip(tree, node)) continue;
    const sisters = childrenOf(tree, tree.parent[node]!).filter((other) => other !== node);
    const oldestSister = Math.max(...sisters.map((sister) => firstMa[sister]!));
    consistent += Number(firstMa[node]! <= oldestSister);
    all++;
  }
  return consistent / all;
}

/** Gaps of the tree with its first finds dealt out anew, for a test against chance. */
export interface CongruenceTest {
  readonly draws: number;
  /** Share of deals with a gap as small as the tree's or smaller, the tree itself counted once. */
  readonly pValue: number;
  readonly meanGapMyr: number;
}

/** Deals first finds out among the tips so many times, seeded, and counts the gaps no longer than the tree's own. */
export function testCongruence(
  tree: Tree,
  ranges: ReadonlyMap<string, FindRange>,
  draws: number,
  random: Random,
): CongruenceTest {
  const labels = [...requireTipsByLabel(tree).keys()];
  const gapOf = (deal: ReadonlyMap<string, FindRange>) =>
    ghostRanges(tree, firstFinds(tree, deal)).reduce((sum, { fromMa, toMa }) => sum + fromMa - toMa, 0);
  const own = gapOf(ranges);
  const firsts = labels.map((label) => ranges.get(label)!.firstMa);
  let small = 0;
  let sum = 0;
  for (let draw = 0; draw < draws; draw++) {
    for (let k = firsts.length - 1; k > 0; k--) {
      const other = Math.floor(random() * (k + 1));
      [firsts[k], firsts[other]] = [firsts[other]!, firsts[k]!];
    }
    const gap = gapOf(new Map(labels.map((label, k) => [label, { firstMa: firsts[k]!, lastMa: -Infinity }])));
    small += Number(gap <= own * (1 + 1e-12));
    sum += gap;
  }
  return { draws, pValue: (small + 1) / (draws + 1), meanGapMyr: sum / draws };
}
