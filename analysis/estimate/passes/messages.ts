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

/** Messages of the values, and of the column that a trend or a predictor adds: the precisions are the same. */
export interface ColumnMessages {
  readonly messages: Messages;
  readonly columnMessages: Messages;
}

/** Room for both columns of a network of so many nodes. */
export function makeColumnMessages(count: number): ColumnMessages {
  const messages = makeMessages(count);
  const columnMessages = {
    ...messages,
    belowMean: new Float64Array(count),
    risingMean: new Float64Array(count),
    otherMean: new Float64Array(count),
    fallingMean: new Float64Array(count),
  };
  return { messages, columnMessages };
}

let spare: ColumnMessages | undefined;

/**
 * What a use makes of room for both columns, which is not to be kept: the next use on a network of the same size has the
 * same room.
 */
export function withColumnMessages<T>(count: number, use: (room: ColumnMessages) => T): T {
  const room = spare?.messages.belowMean.length === count ? spare : makeColumnMessages(count);
  // a use within this one must not have it too
  spare = undefined;
  const made = use(room);
  spare = room;
  return made;
}

let scratch = makeColumnMessages(0);

/**
 * Room that every likelihood writes over, so that nobody may read it later: a span asks for a hundred thousand of them on
 * networks of one size, and making the room would cost as much as the passes.
 */
export function scratchFor(count: number): ColumnMessages {
  if (scratch.messages.belowMean.length !== count) scratch = makeColumnMessages(count);
  return scratch;
}
