/*
 * Estimates from relatives: Brownian motion or with a trend on a dated tree, fossils, sampling variance and limits
 * included, the rate integrated. `estimateTrait` is the door; `spanOver`, `slopeOnTree` and `statusOf` stand beside it.
 */
export { estimateTips, estimateTrait, type TipEstimates, type TraitQuestion } from './estimate-trait.ts';
export type { ModelFacts, NodeEstimate, NoEstimate, TraitAnswer } from './trait-answer.ts';
export { correctedCriterion, trendMargin, type ComparedModel } from './models/compare-models.ts';
export type { LimitFacts } from './estimate-nodes.ts';
export type { ModelName } from './rate/fit.ts';
export type { LimitProbability } from './limits/limit-probability.ts';
export type { LeftOut } from './leave-one-out.ts';
export type { LimitObservation } from './limits/limit-observation.ts';
export type { Observation } from './observation.ts';
export type { ValueEstimate } from './posterior.ts';
export type { RelativeWeight } from './relative-weights.ts';
export { branchesAt, findPointEstimates, type BranchPoint } from './points.ts';
export { compareSensitivity, type SensitivityModel } from './models/sensitivity.ts';
export {
  spanOver,
  type DatedHypothesis,
  type SpanAnswer,
  type SpanQuestion,
  type ValueSpan,
} from './span.ts';
export { statusOf, type StatusGrounds, type UnknownReason, type ValueStatus } from './status.ts';
export { findBrownianRate } from './brownian-rate.ts';
export { findBestSlope, slopeOnTree, type LinePoint, type NoSlope, type TreeSlope } from './tree-slope.ts';
export { findTreeBlindInterval } from './tree-blind.ts';
