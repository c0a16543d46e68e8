/** Room for the messages of one rate, reused from pass to pass; precisions are 0 where nothing is known. */
export interface Messages {
  /** What the node and everything under it say of its value. */
  readonly belowPrecision: Float64Array;
  readonly belowMean: Float64Array;
  /** The same, carried up its branch to the parent. */
  readonly risingPrecision: Float64Array;
  readonly risingMean: Float64Array;
  /** What everything but this node and what is under it says of its parent's value. */
  readonly otherPrecision: Float64Array;
  readonly otherMean: Float64Array;
  /** The same, carried down the branch to the node. */
  readonly fallingPrecision: Float64Array;
  readonly fallingMean: Float64Array;
}

/** Room for the messages of a network of so many nodes. */
export function makeMessages(count: number): Messages {
  return {
    belowPrecision: new Float64Array(count),
    belowMean: new Float64Array(count),
    risingPrecision: new Float64Array(count),
    risingMean: new Float64Array(count),
    otherPrecision: new Float64Array(count),
    otherMean: new Float64Array(count),
    fallingPrecision: new Float64Array(count),
    fallingMean: new Float64Array(count),
  };
}
