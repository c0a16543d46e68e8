import type { ComparedModel } from './models/compare-models.ts';
import type { LimitFacts } from './estimate-nodes.ts';
import type { ModelName } from './rate/fit.ts';
import type { LeftOut } from './leave-one-out.ts';
import type { ValueEstimate } from './posterior.ts';
import type { RelativeWeight } from './relative-weights.ts';

/** Why there is no estimate, as a code. */
export type NoEstimate =
  | 'fewer-than-four'
  | 'fewer-than-five-for-trend'
  | 'exact-values-equal'
  | 'trend-not-told'
  | 'trend-without-scatter';

/** Estimate of one node of the tree; `node` is its index in the tree. */
export interface NodeEstimate extends ValueEstimate {
  readonly node: number;
  readonly label: string;
  readonly observed: boolean;
  /**
   * Weights of the observed taxa, largest first, adding up to 1; for tips without an observation only. Limits have no
   * weight: they move an estimate, but not in proportion.
   */
  readonly relatives?: readonly RelativeWeight[];
}

/** Facts of the fitted model; rates in squared units of the scale a million years. */
export interface ModelFacts {
  readonly name: ModelName;
  /** Degrees of freedom of the rate: observations less one, or less two with a trend. */
  readonly degreesOfFreedom: number;
  readonly rateMedian: number;
  readonly rateInterval: readonly [number, number];
  /** Rate of largest restricted likelihood; 0 when that lies on the bound of no change. */
  readonly rateReml: number;
  readonly rateMl: number;
  readonly logLikelihoodReml: number;
  readonly logLikelihoodMl: number;
  /** Change a million years on the scale of the model, for a trend. */
  readonly slope?: { readonly median: number; readonly interval: readonly [number, number] };
  /** Models by full likelihood; the one used need not be the one of the lowest criterion. */
  readonly compared: readonly ComparedModel[];
}

/** Answer of `estimateTrait`. */
export type TraitAnswer =
  | { readonly estimated: false; readonly reason: NoEstimate }
  | {
      readonly estimated: true;
      readonly model: ModelFacts;
      /** One entry a node of the tree, in its order: tips and forks; or one for each tip asked for. */
      readonly nodes: readonly NodeEstimate[];
      /** How limits of broken specimens entered. */
      readonly limits: LimitFacts;
      readonly leaveOneOut: readonly LeftOut[];
      /** Interval for one more taxon without a tree; an estimate no narrower than this is not worth printing. */
      readonly treeBlind: readonly [number, number];
    };
