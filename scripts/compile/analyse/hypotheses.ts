import type { DatedHypothesis } from '../../../analysis/estimate/index.ts';
import { dateTree, type DatedTree, type Dating, type TipAges } from '../../../analysis/tree/index.ts';
import type { DatedLineageTree } from './date-trees.ts';
import { unlessRefused } from './engine-refusal.ts';

/** Shortest branch of the alternative rule, as a share of the age of the root. */
const minimumBranchShare = 0.02;

/** Every tree by its own rule of dating, and by the other where branch lengths are not given; the reference tree first. */
export function everyHypothesis(trees: readonly DatedLineageTree[]): DatedHypothesis[] {
  return trees.toSorted((a, b) => Number(b.reference) - Number(a.reference)).flatMap(hypothesesOf);
}

/** A tree by its own rule of dating, and by the other where branch lengths are not given. */
export function hypothesesOf({ id, topology, dating }: DatedLineageTree): DatedHypothesis[] {
  return [dating, ...alternatives(dating)].map((each) => ({ id, tree: topology, dating: each }));
}

/** The tree of a hypothesis dated at these ages; undefined where its rule cannot. */
export function findDated({ tree, dating }: DatedHypothesis, ages: TipAges): DatedTree | undefined {
  return unlessRefused(() => dateTree(tree, dating, ages));
}

function alternatives(dating: Dating): Dating[] {
  if (dating.rule === 'given' || dating.rootAgeMa === undefined) return [];
  if (dating.rule === 'minimum-branch') return [{ rule: 'equal-share', rootAgeMa: dating.rootAgeMa }];
  return [
    { rule: 'minimum-branch', minimumMa: minimumBranchShare * dating.rootAgeMa, rootAgeMa: dating.rootAgeMa },
  ];
}
