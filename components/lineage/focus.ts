import type { CompiledTree } from '../../scripts/compile/contract.ts';

/**
 * Ids of the animals that a step's `focus` names. `clade:a+b` is every animal that descends from the last fork which a and b
 * share; anything else is a list of ids. An id that the tree lacks stands as it is.
 */
export function focusTaxa(focus: string, tree: CompiledTree | undefined): string[] {
  const words = focus.split(/\s+/).filter(Boolean);
  return [
    ...new Set(
      words.flatMap((word) =>
        word.startsWith('clade:') && tree ? cladeOf(word.slice(6).split('+'), tree) : word,
      ),
    ),
  ];
}

function cladeOf(members: readonly string[], tree: CompiledTree): string[] {
  const nodes = new Map(tree.nodes.map((node) => [node.id, node]));
  const lineOf = (taxon: string): string[] => {
    const line: string[] = [];
    let node = tree.nodes.find((each) => each.taxon === taxon);
    for (; node; node = node.parent === null ? undefined : nodes.get(node.parent)) line.push(node.id);
    return line;
  };
  const lines = members.map(lineOf).filter((line) => line.length > 0);
  const shared = lines[0]?.find((id) => lines.every((line) => line.includes(id)));
  if (shared === undefined) return [...members];
  return tree.nodes.flatMap((node) => (node.taxon && lineOf(node.taxon).includes(shared) ? node.taxon : []));
}
