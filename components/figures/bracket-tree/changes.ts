import type { CompiledLineage } from '../../../scripts/compile/contract.ts';

/** Numbers of the characters that change on the branch to a node, counted from one in the order of the records. */
export type ChangesByNode = ReadonlyMap<string, readonly number[]>;

/** Which characters change on which branch of the reference tree. */
export function changesByNode({ characters = [] }: CompiledLineage): ChangesByNode {
  const byNode = new Map<string, number[]>();
  characters.forEach(({ changes }, index) => {
    for (const { node } of changes) byNode.set(node, [...(byNode.get(node) ?? []), index + 1]);
  });
  return byNode;
}
