import {
  shapesAtNodes,
  shapeTrendOnTree,
  type Shape,
  type ShapeTrend,
} from '../../../analysis/geometry/index.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import type { TaxonShape } from './taxon-shape.ts';

/** What the skulls of a tree say of each other, all in the frame of the measured line. */
export interface Relatives {
  /** Shape at each node of the tree, tips and forks, by its index. */
  readonly atNodes: readonly Shape[];
  /** The same for the tips, by taxon. */
  readonly ofTaxa: ReadonlyMap<string, Shape>;
  /** How landmarks move with the reading, corrected for descent. */
  readonly trend: ShapeTrend;
}

/** Shapes at every node of the tree from the taxa whose shape lies whole in the frame. */
export function relativesOn(
  tree: DatedLineageTree,
  shapes: ReadonlyMap<string, TaxonShape>,
  reading: string,
): Relatives {
  const sources = new Map(
    [...shapes].flatMap(([taxon, shape]) =>
      shape.framed && !shape.broken && tree.taxa.has(taxon) ? [[taxon, shape.points] as const] : [],
    ),
  );
  const atNodes = shapesAtNodes(tree.dated, sources);
  return {
    atNodes,
    ofTaxa: new Map(
      atNodes.flatMap((shape, node) => {
        const taxon = tree.dated.label[node]!;
        return taxon === '' ? [] : [[taxon, shape] as const];
      }),
    ),
    trend: shapeTrendOnTree(tree.dated, sources, reading),
  };
}
