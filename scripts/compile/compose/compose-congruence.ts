import type { TreeCongruence } from '../analyse/congruence.ts';
import type { CompiledCongruence, CompiledGhost } from '../contract-trend.ts';
import { nodeIds } from './compose-records.ts';

/** Ghost ranges of the reference tree, oldest first; none where its finds do not tell. */
export function composeGhosts(trees: readonly TreeCongruence[]): CompiledGhost[] {
  const reference = trees.find(({ tree }) => tree.reference);
  if (!reference || typeof reference.found === 'string') return [];
  const { label } = reference.tree.dated;
  const ids = nodeIds(label);
  return reference.found.congruence.ghosts
    .map(({ node, fromMa, toMa }) => ({
      node: ids[node]!,
      ...(label[node] ? { taxon: label[node] } : {}),
      fromMa,
      toMa,
    }))
    .sort((a, b) => b.fromMa - a.fromMa || b.toMa - a.toMa || (a.node < b.node ? -1 : 1));
}

/** Each tree against the order of finds: indices and permutations, or the reason for none. */
export function composeCongruence(trees: readonly TreeCongruence[]): CompiledCongruence[] {
  return trees.map(({ tree, taxa, found }) => {
    if (typeof found === 'string') return { tree: tree.id, taxa, reason: found, ...noIndices };
    const { ghosts: _ghosts, ...indices } = found.congruence;
    return { tree: tree.id, taxa, ...indices, permutations: found.test };
  });
}

const noIndices = {
  gapMyr: null,
  consistency: null,
  completeness: null,
  gapExcessRatio: null,
  gapRatio: null,
};
