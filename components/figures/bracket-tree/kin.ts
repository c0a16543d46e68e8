import type { CompiledTree } from '../../../scripts/compile/contract.ts';

/** A fork with what hangs on it, in the order from top to bottom; an animal is a fork without children. */
export interface Kin {
  /** The animal's id, or the fork's. */
  id: string;
  children: readonly Kin[];
}

/** A tree as relatives see it, with the age in Ma of every fork and animal. */
export interface DatedKin {
  root: Kin;
  agesMa: ReadonlyMap<string, number>;
}

/**
 * The relatives of a compiled tree. A node with one child is passed over, and a fork that carries a name gives it to a
 * line of its own, so that every named animal ends a line. Undefined for a tree without a root.
 */
export function kinOf(tree: CompiledTree): DatedKin | undefined {
  const root = tree.nodes.find((node) => node.parent === null);
  if (!root) return undefined;
  const children = Map.groupBy(tree.nodes, (node) => node.parent);
  const agesMa = new Map<string, number>();
  const grow = (node: CompiledTree['nodes'][number]): Kin => {
    const grown = (children.get(node.id) ?? []).map(grow);
    const own = node.taxon ?? (grown.length === 0 ? node.id : undefined);
    if (own !== undefined) agesMa.set(own, node.ageMa);
    const all = own === undefined ? grown : [...grown, { id: own, children: [] }];
    if (all.length === 1) return all[0]!;
    agesMa.set(node.id, node.ageMa);
    return { id: node.id, children: all };
  };
  return { root: grow(root), agesMa };
}

/** The animals below a fork, from top to bottom; an animal alone gives itself. */
export function tipsOf(kin: Kin): string[] {
  return kin.children.length === 0 ? [kin.id] : kin.children.flatMap(tipsOf);
}

/** The forks of a tree, each before those that hang on it. Empty for one animal. */
export function forksOf(kin: Kin): Kin[] {
  return kin.children.length === 0 ? [] : [kin, ...kin.children.flatMap(forksOf)];
}
