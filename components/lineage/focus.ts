import type { CompiledTree } from '../../scripts/compile/contract.ts';

/**
 * Ids of what a step's `focus` names. `clade:a+b` is every animal that descends from the last fork which a and b share;
 * `branch:a+b` is the branch that leads to that fork, with its ribbon, after a and b themselves; anything else is a list of ids.
 * An id that the tree lacks stands as it is.
 */
export function focusTaxa(focus: string, tree: CompiledTree | undefined): string[] {
  const words = focus.split(/\s+/).filter(Boolean);
  return [
    ...new Set(
      words.flatMap((word) => {
        if (word.startsWith('clade:') && tree) return cladeOf(word.slice(6).split('+'), tree);
        if (!word.startsWith('branch:')) return word;
        const node = tree && findBranch(word, tree);
        return [...membersOf(word), ...(node ? [node.taxon ?? node.id, ribbonId(node.id)] : [])];
      }),
    ),
  ];
}

/** The younger end of the branch that a word `branch:a` or `branch:a+b` names; undefined where the tree has none. */
export function findBranch(word: string, tree: CompiledTree): CompiledTree['nodes'][number] | undefined {
  const shared = findShared(membersOf(word), tree);
  const node = tree.nodes.find(({ id }) => id === shared);
  return node?.parent == null ? undefined : node;
}

/** What a plate calls the ribbon of a branch. */
export function ribbonId(node: string): string {
  return `ribbon-${node}`;
}

function membersOf(word: string): string[] {
  return word.slice('branch:'.length).split('+');
}

function cladeOf(members: readonly string[], tree: CompiledTree): string[] {
  const shared = findShared(members, tree);
  if (shared === undefined) return [...members];
  return tree.nodes.flatMap((node) =>
    node.taxon && lineOf(node.taxon, tree).includes(shared) ? node.taxon : [],
  );
}

/** The youngest node that all of them descend from, or are. */
function findShared(members: readonly string[], tree: CompiledTree): string | undefined {
  const lines = members.map((member) => lineOf(member, tree)).filter((line) => line.length > 0);
  return lines[0]?.find((id) => lines.every((line) => line.includes(id)));
}

/** Nodes from an animal to the root. */
function lineOf(taxon: string, { nodes }: CompiledTree): string[] {
  const parents = new Map(nodes.map(({ id, parent }) => [id, parent]));
  const line: string[] = [];
  let at: string | null | undefined = nodes.find((each) => each.taxon === taxon)?.id;
  for (; at; at = parents.get(at)) line.push(at);
  return line;
}
