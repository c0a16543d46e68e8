import { timeReach, type AtRate } from './per-rate.ts';

/**
 * Covariance of every node's value with one node's, given all observations, at one rate: one walk up from the node and
 * one pass down the rest. Written into `into`, which has one place a node.
 */
export function covariancesWith(known: AtRate, target: number, into: Float64Array): void {
  const { network, messages, rate } = known;
  const { parent, branchMa } = network;
  const { belowPrecision, fallingPrecision, otherPrecision } = messages;
  into.fill(NaN);
  const below = belowPrecision[target]!;
  into[target] = below === Infinity ? 0 : 1 / (below + fallingPrecision[target]!);
  for (let node = target; parent[node] !== -1; node = parent[node]!)
    into[parent[node]!] = into[node]! * regression(otherPrecision[node]!, rate * branchMa[node]!);
  for (let node = parent.length - 2; node >= 0; node--)
    if (Number.isNaN(into[node]!))
      into[node] = into[parent[node]!]! * regression(belowPrecision[node]!, rate * branchMa[node]!);
  if (!known.trend) return;
  const atTarget = timeReach(known, { node: target, upMa: 0 }) * known.trend.variance;
  for (let node = 0; node < into.length; node++)
    into[node]! += atTarget * timeReach(known, { node, upMa: 0 });
}

/** How much of a change at one end of a branch the other end follows, given what else is known of that end. */
function regression(precision: number, drift: number): number {
  return precision === Infinity ? 0 : 1 / (1 + precision * drift);
}
