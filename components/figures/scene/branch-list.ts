import type { CompiledGhost } from '../../../scripts/compile/contract.ts';
import type { CompiledTrait, CompiledTree } from '../../../scripts/compile/contract.ts';
import type { PlateTaxon } from './plate-data.ts';

/** One end of a branch: its age, and where across the plate it stands, in trait units. */
export interface BranchEnd {
  ageMa: number;
  value: number;
}

/** A line of descent from a fork to the next fork or to a named animal, which it meets at the foot of its bar. */
export interface Branch {
  id: string;
  from: BranchEnd;
  to: BranchEnd;
  /** The animal whose own twig this is. */
  taxon?: string;
  /** Youngest age at which the branch is known to exist: its fork, or the last find of its animal. */
  lastMa: number;
  /** The stretch in which it must have lived by the finds of its relatives, and nothing of it has been found. */
  ghost?: { fromMa: number; toMa: number };
}

/**
 * The branches of a dated tree, placed across the plate by the inferred middle of each fork. A fork without an
 * inferred value stands at the mean of what hangs on it; an animal without a value gives no place and its twig
 * rises straight.
 */
export function branchesOf(
  tree: CompiledTree,
  trait: CompiledTrait,
  taxa: readonly PlateTaxon[],
  ghosts: readonly CompiledGhost[] = [],
): Branch[] {
  const taxon = new Map(taxa.map((each) => [each.id, each]));
  const fork = new Map(trait.nodes.map((node) => [node.node, node.median]));
  const children = Map.groupBy(tree.nodes, (node) => node.parent);
  const nodes = new Map(tree.nodes.map((node) => [node.id, node]));
  const ghostOf = new Map(ghosts.map(({ node, fromMa, toMa }) => [node, { fromMa, toMa }]));
  const placed = new Map<string, number>();
  const place = (id: string): number => {
    const known = placed.get(id);
    if (known !== undefined) return known;
    const node = nodes.get(id)!;
    const own = node.taxon ? tipValue(taxon.get(node.taxon)) : fork.get(id);
    const below = own ?? mean((children.get(id) ?? []).map((child) => place(child.id)));
    placed.set(id, below);
    return below;
  };
  return tree.nodes.flatMap((node) => {
    if (node.parent === null) return [];
    const tip = node.taxon ? taxon.get(node.taxon) : undefined;
    const forkAge = nodes.get(node.parent)!.ageMa;
    return {
      id: node.id,
      from: { ageMa: forkAge, value: place(node.parent) },
      to: { ageMa: tip ? Math.min(tip.firstMa, forkAge) : node.ageMa, value: place(node.id) },
      ...(node.taxon && { taxon: node.taxon }),
      lastMa: tip ? tip.lastMa : node.ageMa,
      ...(ghostOf.has(node.id) && { ghost: ghostOf.get(node.id)! }),
    };
  });
}

/** Where an animal stands across the plate; undefined when nothing is known of it. */
export function tipValue(taxon: PlateTaxon | undefined): number | undefined {
  return taxon?.estimate ?? taxon?.atLeast ?? taxon?.atMost ?? undefined;
}

/** The branches that a line at one age cuts. */
export function branchesAt<T extends { readonly from: { readonly ageMa: number }; readonly lastMa: number }>(
  branches: readonly T[],
  ageMa: number,
): T[] {
  return branches.filter((branch) => branch.from.ageMa > ageMa && ageMa >= branch.lastMa);
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
