/*
 * Discrete characters: steps on a tree and indices, cheapest histories, rates of change and states at forks by likelihood,
 * which states are diagnostic, and what living relatives on both sides say.
 */
export type { Character } from './character.ts';
export { findBestChangeRate, type BestChangeRate } from './best-change-rate.ts';
export { changeLikelihood, type ChangeAnswer, type ChangeQuestion } from './change-likelihood.ts';
export {
  changeProbabilities,
  equalRates,
  gainAndLossRates,
  orderedRates,
  type ChangeRates,
} from './change-rates.ts';
export { certainChanges, type CertainChange } from './certain-changes.ts';
export { countSteps } from './count-steps.ts';
export {
  cheapestHistories,
  irreversibleCost,
  orderedCost,
  unorderedCost,
  type ChangeCost,
  type CheapestHistories,
} from './least-cost.ts';
export { spreadOfState, type Readings, type StateCounts, type StateSpread } from './diagnosis.ts';
export {
  bracketReadings,
  type BracketLevel,
  type BracketReading,
  type BracketVerdict,
} from './living-bracket.ts';
export { livingSides, type LivingSide } from './living-sides.ts';
export { fitCharacter, fitMatrix, type CharacterFit, type MatrixFit } from './fit.ts';
export { consistencyIndex, retentionIndex, type StepCounts } from './indices.ts';
export { isInformative, maximumSteps, minimumSteps } from './step-range.ts';
