/* Trees: Newick and NEXUS text, the flat form that everything else runs on, and the rules that date it. */
export {
  buildTree,
  childrenOf,
  isTip,
  requireTipsByLabel,
  rootOf,
  tipsOf,
  type DatedTree,
  type Tree,
} from './tree.ts';
export { parseNewick } from './newick.ts';
export { parseNexusTrees, type NamedTree } from './nexus.ts';
export { TreeTextError } from './tree-text-error.ts';
export { writeNewick } from './write-newick.ts';
export { dateTree, type Dating } from './date.ts';
export { dateAsGiven, findMisplacedTips } from './date-as-given.ts';
export { dateByEqualShare } from './date-equal-share.ts';
export { dateByMinimumBranch } from './date-minimum-branch.ts';
export { datedTree, describeNode, type TipAges } from './dated.ts';
