import {
  certainChanges,
  fitCharacter,
  fitMatrix,
  orderedCost,
  unorderedCost,
  type Character,
} from '../../../analysis/characters/index.ts';
import type { DatedTree } from '../../../analysis/tree/index.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import type { CompiledLineage } from '../contract.ts';
import type { CompiledCharacter } from '../contract-characters.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { AuthoredCharacter } from '../schema/index.ts';
import { composeChangeRate } from './change-rate.ts';
import { nodeIds } from './compose-records.ts';
import { composeSoftPart } from './soft-parts.ts';

/** Nodes of the tree times characters beyond which no rate is looked for: each takes eighty passes, a second and a half at this. */
const mostRatedNodes = 5000;

/** Every character with its changes on the reference tree; an animal outside the tree is listed and plays no part. */
export function composeCharacters(
  { characters, taxa }: LineageRecords,
  trees: readonly DatedLineageTree[],
): CompiledCharacter[] {
  const tree = trees.find(({ reference }) => reference)?.dated;
  const ids = tree && nodeIds(tree.label);
  const order = taxa.records.map(({ value }) => value.id);
  const matrix = new Map(characters.records.map(({ value }) => [value.id, statesByTaxon(value, order)]));
  const isRated = tree !== undefined && tree.parent.length * matrix.size <= mostRatedNodes;
  const living = new Set(taxa.records.flatMap(({ value }) => (value.living ? [value.id] : [])));
  return characters.records.map(({ value }): CompiledCharacter => {
    const scored = matrix.get(value.id)!;
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
      ...(tree && !value.softPart && ofSkeleton(tree, scored, value, isRated)),
      ...(tree && value.softPart && { softPart: composeSoftPart(value, { tree, matrix, living }) }),
    };
  });
}

/** How all unordered characters of bones together go with the reference tree; undefined where none tells one tree from another. */
export function composeMatrixFit(
  { characters, taxa }: LineageRecords,
  trees: readonly DatedLineageTree[],
): CompiledLineage['matrixFit'] {
  const tree = trees.find(({ reference }) => reference)?.dated;
  if (!tree) return undefined;
  const order = taxa.records.map(({ value }) => value.id);
  const matrix = characters.records.flatMap(({ value }) =>
    value.ordered || value.softPart ? [] : [statesByTaxon(value, order)],
  );
  const { counted, steps, minimum, maximum, consistency, retention } = fitMatrix(tree, matrix, {
    informativeOnly: true,
  });
  return counted > 0 ? { characters: counted, steps, minimum, maximum, consistency, retention } : undefined;
}

/** How a character of bones goes with the tree, and how fast it changes on it, if that is asked. */
function ofSkeleton(
  tree: DatedTree,
  scored: Character,
  { states, ordered }: AuthoredCharacter,
  isRated: boolean,
): Pick<CompiledCharacter, 'fit' | 'rate'> {
  const ids = states.map(({ id }) => id);
  const { minimum, maximum, consistency, retention } = fitCharacter(tree, scored);
  return {
    ...(!ordered && { fit: { minimum, maximum, consistency, retention } }),
    ...(isRated && { rate: composeChangeRate(tree, scored, { states: ids, ordered }) }),
  };
}

/** States of each scored animal in the order of the states, animals in the order of the records. */
function statesByTaxon({ states, scored }: AuthoredCharacter, order: readonly string[]): Character {
  const of = (taxon: string) => states.flatMap(({ id }) => (scored[id]?.includes(taxon) ? [id] : []));
  return new Map(order.map((taxon) => [taxon, of(taxon)] as const).filter(([, own]) => own.length > 0));
}
