import type { Messages } from './messages.ts';

/** Mean and variance of one value. */
export interface Belief {
  mean: number;
  variance: number;
}

/** After both passes: what all observations say of a node, as mean and variance; the variance is 0 if it is exact. */
export function beliefAt(messages: Messages, node: number): Belief {
  const below = messages.belowPrecision[node]!;
  const above = messages.fallingPrecision[node]!;
  if (below === Infinity) return { mean: messages.belowMean[node]!, variance: 0 };
  return combine(below, messages.belowMean[node]!, above, messages.fallingMean[node]!);
}

/**
 * After both passes: what all observations say of the value at a point on the branch above a node, so many million
 * years before the node.
 */
export function beliefAlongBranch(
  messages: Messages,
  node: number,
  rate: number,
  upMa: number,
  downMa: number,
): Belief {
  const below = messages.belowPrecision[node]!;
  const above = messages.otherPrecision[node]!;
  const fromBelow = below > 0 ? 1 / (1 / below + rate * upMa) : 0;
  const fromAbove = above > 0 ? 1 / (1 / above + rate * downMa) : 0;
  return combine(fromBelow, messages.belowMean[node]!, fromAbove, messages.otherMean[node]!);
}

function combine(below: number, belowMean: number, above: number, aboveMean: number): Belief {
  if (below === Infinity) return { mean: belowMean, variance: 0 };
  if (above === Infinity) return { mean: aboveMean, variance: 0 };
  const precision = below + above;
  return { mean: (below * belowMean + above * aboveMean) / precision, variance: 1 / precision };
}
