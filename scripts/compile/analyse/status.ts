import type { NodeEstimate, NoEstimate, TraitAnswer } from '../../../analysis/estimate/index.ts';

/** Why a value is unknown, as a code. */
export type UnknownReason = NoEstimate | 'no-tree' | 'not-in-tree' | 'no-narrower';

/** What relatives say of a taxon without specimens of its own: an estimate worth printing, or why there is none. */
export type FromRelatives = { inferred: NodeEstimate } | { unknown: UnknownReason };

/**
 * The rule between inferred and unknown: unknown without a tree, outside it, with fewer than four measured taxa, or
 * where the 95% interval is no narrower than the interval that uses no tree.
 */
export function askRelatives(answer: TraitAnswer | undefined, taxon: string, inTree: boolean): FromRelatives {
  if (!answer) return { unknown: 'no-tree' };
  if (!inTree) return { unknown: 'not-in-tree' };
  if (!answer.estimated) return { unknown: answer.reason };
  const estimate = answer.nodes.find((node) => node.label === taxon)!;
  const [low, high] = estimate.interval;
  const [blindLow, blindHigh] = answer.treeBlind;
  return high - low < blindHigh - blindLow ? { inferred: estimate } : { unknown: 'no-narrower' };
}
