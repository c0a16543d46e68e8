/* Discrete characters: steps on a tree, consistency and retention indices, and characters that cannot tell trees apart. */
export type { Character } from './character.ts';
export { countSteps } from './count-steps.ts';
export { fitCharacter, fitMatrix, type CharacterFit, type MatrixFit } from './fit.ts';
export { consistencyIndex, retentionIndex, type StepCounts } from './indices.ts';
export { isInformative, maximumSteps, minimumSteps } from './step-range.ts';
