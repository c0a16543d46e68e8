import type { Tree } from '../tree/index.ts';
import type { Character } from './character.ts';
import { countSteps } from './count-steps.ts';
import { consistencyIndex, retentionIndex, type StepCounts } from './indices.ts';
import { maximumSteps, minimumSteps } from './step-range.ts';

/** How a tree agrees with one character; an index that has no value is null. */
export interface CharacterFit extends StepCounts {
  readonly informative: boolean;
  readonly consistency: number | null;
  readonly retention: number | null;
}

/** How a tree agrees with a matrix: sums over the characters counted, and indices of the sums. */
export interface MatrixFit extends StepCounts {
  readonly characters: readonly CharacterFit[];
  /** How many characters the sums hold. */
  readonly counted: number;
  readonly consistency: number | null;
  readonly retention: number | null;
}

/** Steps of one unordered character on a tree, with its indices. */
export function fitCharacter(tree: Tree, character: Character): CharacterFit {
  const counts = {
    steps: countSteps(tree, character),
    minimum: minimumSteps(tree, character),
    maximum: maximumSteps(tree, character),
  };
  return { ...counts, informative: counts.maximum > counts.minimum, ...indicesOf(counts) };
}

/**
 * Steps of a matrix of unordered characters of equal weight, with the indices of the sums (the ensemble indices of
 * Farris 1989). Every character is listed; those that are not informative stay out of the sums if `informativeOnly`.
 */
export function fitMatrix(
  tree: Tree,
  matrix: readonly Character[],
  options: { readonly informativeOnly?: boolean } = {},
): MatrixFit {
  const characters = matrix.map((character) => fitCharacter(tree, character));
  const counted = characters.filter(({ informative }) => informative || options.informativeOnly !== true);
  const counts = { steps: 0, minimum: 0, maximum: 0 };
  for (const { steps, minimum, maximum } of counted) {
    counts.steps += steps;
    counts.minimum += minimum;
    counts.maximum += maximum;
  }
  return { ...counts, characters, counted: counted.length, ...indicesOf(counts) };
}

function indicesOf(counts: StepCounts): { consistency: number | null; retention: number | null } {
  return { consistency: consistencyIndex(counts), retention: retentionIndex(counts) };
}
