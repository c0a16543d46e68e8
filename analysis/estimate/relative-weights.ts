import type { Fit } from './rate/fit.ts';
import type { Messages } from './passes/messages.ts';
import type { Network } from './passes/network.ts';
import { timeReach, type AtRate, type RateReading } from './passes/per-rate.ts';

/** Share that an observed taxon has in an estimate. All shares of an estimate add up to 1; under a trend some may be negative. */
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
 * Reads the weight of every observed taxon in the estimate of each target node, largest first, over the integrated rate: the
 * passes run once for all targets, and backwards from each. Linear in nodes for one target.
 */
export function readRelativeWeights(
  { network }: Fit,
  targets: readonly number[],
): RateReading<RelativeWeight[][]> {
  const count = network.parent.length;
  const shares: Shares = { below: new Float64Array(count), own: new Float64Array(count) };
  const sums = targets.map(() => new Float64Array(network.observations.length));
  const ownParts = network.observations.map((_, index) => ownPart(network, index));
  return {
    needs: () => targets.length > 0,
    atRate: (known) =>
      targets.forEach((target, k) => addShares(known, target, { shares, ownParts, sums: sums[k]! })),
    result: () =>
      sums.map((own) =>
        network.observations
          .map(({ taxon }, index) => ({ taxon, weight: own[index]! }))
          .sort((a, b) => b.weight - a.weight || (a.taxon < b.taxon ? -1 : 1)),
      ),
  };
}

/** Adds to the sums of one target its shares at one rate, by the rate's weight. */
function addShares(
  known: AtRate,
  target: number,
  { shares, ownParts, sums }: { shares: Shares; ownParts: readonly number[]; sums: Float64Array },
): void {
  const { network, weight } = known;
  shares.below.fill(0);
  shares.own.fill(0);
  shareUpward(network, known.messages, target, shares);
  shareDownward(network, known.messages, shares);
  const reach = timeReach(known, { node: target, upMa: 0 });
  for (let index = 0; index < sums.length; index++) {
    const slopePart = known.trend ? reach * known.trend.variance * timeResidual(known, index) : 0;
    sums[index]! += weight * (ownParts[index]! * shares.own[network.observedAt[index]!]! + slopePart);
  }
}

/** Share of one observation in what was observed at its node: 1 but where zero twigs put several there. */
function ownPart(network: Network, index: number): number {
  const own = network.ownPrecision[network.observedAt[index]!]!;
  const { variance } = network.observations[index]!;
  return own === Infinity ? Number(variance === 0) : 1 / variance / own;
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

/** Time of an observation less what all others say of it, over the variance of that: its part in the slope. */
function timeResidual(known: AtRate, index: number): number {
  const { network, messages } = known;
  const { timeMessages } = known.trend!;
  const node = network.observedAt[index]!;
  const { variance } = network.observations[index]!;
  let precision = messages.fallingPrecision[node]!;
  let moment = precision * timeMessages.fallingMean[node]!;
  for (let child = network.firstChild[node]!; child !== -1; child = network.nextSibling[child]!) {
    precision += messages.risingPrecision[child]!;
    moment += messages.risingPrecision[child]! * timeMessages.risingMean[child]!;
  }
  const sinceRootMa = network.sinceRootMa[node]!;
  network.observations.forEach((other, k) => {
    if (k === index || network.observedAt[k] !== node) return;
    const own = other.variance === 0 ? Number.MAX_VALUE : 1 / other.variance;
    precision += own;
    moment += own * sinceRootMa;
  });
  return (sinceRootMa - moment / precision) / (1 / precision + variance);
}
