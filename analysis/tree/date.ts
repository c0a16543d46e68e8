import { dateAsGiven } from './date-as-given.ts';
import { dateByEqualShare } from './date-equal-share.ts';
import { dateByMinimumBranch } from './date-minimum-branch.ts';
import type { TipAges } from './dated.ts';
import type { DatedTree, Tree } from './tree.ts';

/** A rule that turns a tree and the ages of its tips into a dated tree. */
export type Dating =
  | { readonly rule: 'equal-share'; readonly rootAgeMa: number }
  | { readonly rule: 'minimum-branch'; readonly minimumMa: number; readonly rootAgeMa?: number | undefined }
  | { readonly rule: 'given'; readonly rootAgeMa?: number | undefined };

/** Dates a tree by a rule; under 'given' the branch lengths place the tips and the ages of the tips are not used. */
export function dateTree(tree: Tree, dating: Dating, tipAgesMa: TipAges): DatedTree {
  if (dating.rule === 'equal-share') return dateByEqualShare(tree, tipAgesMa, dating.rootAgeMa);
  if (dating.rule === 'minimum-branch') return dateByMinimumBranch(tree, tipAgesMa, dating);
  return dateAsGiven(tree, dating.rootAgeMa);
}
