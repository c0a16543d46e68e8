import { shapeAtValue, type Shape } from '../../../analysis/geometry/index.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import { nodeIds } from '../compose/compose-records.ts';
import type { CompiledShapes, CompiledTrait } from '../contract.ts';
import type { MeasuredFrame } from './frame.ts';
import type { Relatives } from './relatives.ts';

/**
 * Shapes at every node of the tree as the lineage carries them, each with its reading at the value that the trait has there;
 * a node without a value keeps the reading that relatives' shapes give. Undefined where relatives give no measured line.
 */
export function composeShapes(
  tree: DatedLineageTree,
  { atNodes, trend }: Relatives,
  frame: MeasuredFrame,
  trait: CompiledTrait,
): Omit<CompiledShapes, 'template'> | undefined {
  const landmarks = [...(atNodes[0]?.keys() ?? [])];
  const line = [frame.zero, frame.reading, frame.hundred];
  if (!line.every((id) => landmarks.includes(id))) return undefined;
  const held = new Set([frame.zero, frame.hundred]);
  const values = valuesAt(trait);
  const ids = nodeIds(tree.dated.label);
  const shapeOf = (shape: Shape, node: string): Shape => {
    const value = values.get(node);
    return value === undefined ? shape : shapeAtValue(shape, trend, { reading: frame.reading, value, held });
  };
  return {
    trait: trait.id,
    tree: tree.id,
    landmarks,
    nodes: atNodes.map((shape, index) => {
      const placed = shapeOf(shape, ids[index]!);
      return { node: ids[index]!, at: landmarks.flatMap((id) => [...placed.get(id)!]) };
    }),
  };
}

/** Value of the trait at each fork and each animal that has one: measured, worked out, or the middle of a limit. */
function valuesAt({ nodes, values }: CompiledTrait): Map<string, number> {
  return new Map([
    ...nodes.map(({ node, median }) => [node, median] as const),
    ...values.flatMap(({ taxon, estimate, conditional }) => {
      const value = estimate ?? conditional?.median;
      return value === undefined ? [] : [[taxon, value] as const];
    }),
  ]);
}
