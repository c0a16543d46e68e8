export {
  estimateTrait,
  type ModelFacts,
  type NodeEstimate,
  type NoEstimate,
  type TraitAnswer,
  type TraitQuestion,
} from './estimate-trait.ts';
export type { Observation } from './observation.ts';
export type { LeftOut } from './leave-one-out.ts';
export type { RelativeWeight } from './relative-weights.ts';
export type { ValueEstimate } from './posterior.ts';
export { findTreeBlindInterval } from './tree-blind.ts';
