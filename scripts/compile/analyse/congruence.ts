import {
  congruenceOf,
  testCongruence,
  type Congruence,
  type CongruenceTest,
  type FindRange,
} from '../../../analysis/trend/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { tipsOf } from '../../../analysis/tree/index.ts';
import type { DatedLineageTree } from './date-trees.ts';
import type { Depth } from './estimate-lineage-trait.ts';
import type { TaxonAges } from './taxon-ages.ts';

/** Why a tree is not set against the order of finds. */
export type NoCongruence = 'finds-missing' | 'fewer-than-four' | 'finds-of-one-age';

/** How well one tree agrees with the order of finds, or why that is not told. */
export interface TreeCongruence {
  tree: DatedLineageTree;
  taxa: number;
  found: { congruence: Congruence; test: CongruenceTest } | NoCongruence;
}

/** Times that first finds are dealt out anew. */
const deals = 999;

/** Sets every tree against first and last finds, a bed at its older end for the first and at its younger for the last. */
export function congruenceOfTrees(
  trees: readonly DatedLineageTree[],
  ages: ReadonlyMap<string, TaxonAges>,
  seed: string | number,
  depth: Depth,
): TreeCongruence[] {
  if (depth === 'check') return [];
  const ranges = new Map(
    [...ages].flatMap(([taxon, { age }]): [string, FindRange][] =>
      age ? [[taxon, { firstMa: age.from, lastMa: age.to }]] : [],
    ),
  );
  return trees.map((tree) => ({
    tree,
    taxa: tipsOf(tree.topology).length,
    found: congruenceOn(tree, ranges, seed),
  }));
}

function congruenceOn(
  { id, topology }: DatedLineageTree,
  ranges: ReadonlyMap<string, FindRange>,
  seed: string | number,
): TreeCongruence['found'] {
  const firsts = tipsOf(topology).map((tip) => ranges.get(topology.label[tip]!)?.firstMa);
  if (firsts.some((first) => first === undefined)) return 'finds-missing';
  if (firsts.length < 4) return 'fewer-than-four';
  if (new Set(firsts).size === 1) return 'finds-of-one-age';
  return {
    congruence: congruenceOf(topology, ranges),
    test: testCongruence(topology, ranges, deals, seededRandom(seed, 'first-finds', id)),
  };
}
