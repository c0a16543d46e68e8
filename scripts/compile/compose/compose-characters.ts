import {
  certainChanges,
  orderedCost,
  unorderedCost,
  type Character,
} from '../../../analysis/characters/index.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import type { CompiledCharacter } from '../contract-characters.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { AuthoredCharacter } from '../schema/index.ts';
import { nodeIds } from './compose-records.ts';

/** Every character with its changes on the reference tree; an animal outside the tree is listed and plays no part. */
export function composeCharacters(
  { characters, taxa }: LineageRecords,
  trees: readonly DatedLineageTree[],
): CompiledCharacter[] {
  const tree = trees.find(({ reference }) => reference)?.dated;
  const ids = tree && nodeIds(tree.label);
  const order = taxa.records.map(({ value }) => value.id);
  return characters.records.map(({ value }): CompiledCharacter => {
    const scored = statesByTaxon(value, order);
    const states = value.states.map(({ id }) => id);
    const cost = value.ordered ? orderedCost : unorderedCost;
    const found = tree && certainChanges(tree, scored, { states, cost });
    return {
      id: value.id,
      label: value.label,
      states: value.states,
      ordered: value.ordered,
      scored: [...scored].map(([taxon, states]) => ({ taxon, states: [...states] })),
      sources: value.sources ?? [],
      steps: found?.steps ?? null,
      changes: (found?.changes ?? []).map(({ node, from, to }) => ({
        node: ids![node]!,
        from: [...from],
        to: [...to],
      })),
    };
  });
}

/** States of each scored animal in the order of the states, animals in the order of the records. */
function statesByTaxon({ states, scored }: AuthoredCharacter, order: readonly string[]): Character {
  const of = (taxon: string) => states.flatMap(({ id }) => (scored[id]?.includes(taxon) ? [id] : []));
  return new Map(order.map((taxon) => [taxon, of(taxon)] as const).filter(([, own]) => own.length > 0));
}
