import { forEachRate, type BrownianFit } from './fit.ts';
import type { Messages } from './messages.ts';
import type { Network } from './network.ts';

/** Share that an observed taxon has in an estimate. All shares of an estimate add up to 1. */
export interface RelativeWeight {
  readonly taxon: string;
  readonly weight: number;
}

/** Shares by node: of the message from below, and of the node's own observation. */
interface Shares {
  readonly below: Float64Array;
  readonly own: Float64Array;
}

/**
 * Weight of every observed taxon in the estimate of one node, largest first, over the integrated rate: the passes
 * run backwards from the node. Linear in nodes for one target.
 */
export function relativeWeights(fit: BrownianFit, target: number): RelativeWeight[] {
  const { network, grid } = fit;
  const count = network.parent.length;
  const shares: Shares = { below: new Float64Array(count), own: new Float64Array(count) };
  const sums = new Float64Array(count);
  forEachRate(fit, (messages, _rate, step) => {
    shares.below.fill(0);
    shares.own.fill(0);
    shareUpward(network, messages, target, shares);
    shareDownward(network, messages, shares);
    for (let node = 0; node < count; node++) sums[node]! += grid.weights[step]! * shares.own[node]!;
  });
  return network.observations
    .map(({ taxon, variance }, index) => {
      const node = network.observedAt[index]!;
      const own = network.ownPrecision[node]!;
      const part = own === Infinity ? Number(variance === 0) : 1 / variance / own;
      return { taxon, weight: part * sums[node]! };
    })
    .sort((a, b) => b.weight - a.weight || (a.taxon < b.taxon ? -1 : 1));
}

/** Splits the target between what lies under it and the way up, and each fork on the way among its other sources. */
function shareUpward(network: Network, messages: Messages, target: number, shares: Shares): void {
  const { parent, firstChild, nextSibling, ownPrecision } = network;
  const { belowPrecision, risingPrecision, fallingPrecision, otherPrecision } = messages;
  const below = belowPrecision[target]!;
  shares.below[target] = below === Infinity ? 1 : below / (below + fallingPrecision[target]!);
  let carried = 1 - shares.below[target]!;
  for (let node = target; parent[node] !== -1 && carried > 0; node = parent[node]!) {
    const above = parent[node]!;
    const other = otherPrecision[node]!;
    if (other === Infinity) {
      shares.own[above]! += carried;
      return;
    }
    for (let child = firstChild[above]!; child !== -1; child = nextSibling[child]!)
      if (child !== node) shares.below[child]! += (carried * risingPrecision[child]!) / other;
    shares.own[above]! += (carried * ownPrecision[above]!) / other;
    carried *= fallingPrecision[above]! / other;
  }
}

/** Hands each node's share of the message from below to its own observation and its children, root to tips. */
function shareDownward(network: Network, messages: Messages, shares: Shares): void {
  const { firstChild, nextSibling, ownPrecision } = network;
  const { belowPrecision, risingPrecision } = messages;
  for (let node = network.parent.length - 1; node >= 0; node--) {
    const share = shares.below[node]!;
    if (share === 0) continue;
    const below = belowPrecision[node]!;
    if (below === Infinity) {
      shares.own[node]! += share;
      continue;
    }
    shares.own[node]! += (share * ownPrecision[node]!) / below;
    for (let child = firstChild[node]!; child !== -1; child = nextSibling[child]!)
      shares.below[child]! += (share * risingPrecision[child]!) / below;
  }
}
