import type { Messages } from './messages.ts';
import type { Network } from './network.ts';

/**
 * After `passUp`: carries what is known from root to tips, so that each node holds what the rest of the tree says of
 * it. 'All but this child' is summed over the others, never had by subtraction, which loses digits on short twigs.
 */
export function passDown(network: Network, rate: number, messages: Messages): void {
  const { parent, branchMa, firstChild, nextSibling } = network;
  const { otherPrecision, otherMean, fallingPrecision, fallingMean } = messages;
  const root = parent.length - 1;
  fallingPrecision[root] = 0;
  fallingMean[root] = 0;
  for (let above = root; above >= 0; above--) {
    if (firstChild[above] === -1) continue;
    gatherOthers(network, messages, above);
    for (let child = firstChild[above]!; child !== -1; child = nextSibling[child]!) {
      const known = otherPrecision[child]!;
      fallingPrecision[child] = known > 0 ? 1 / (1 / known + rate * branchMa[child]!) : 0;
      fallingMean[child] = otherMean[child]!;
    }
  }
}

/** What the parent, its own observation and the other children say, for each child: one sweep from each side. */
function gatherOthers(network: Network, messages: Messages, above: number): void {
  const { firstChild, nextSibling, lastChild, previousSibling, ownPrecision, ownMean } = network;
  const { risingPrecision, risingMean, otherPrecision, otherMean, fallingPrecision, fallingMean } = messages;
  const own = ownPrecision[above]!;
  if (own === Infinity) {
    for (let child = firstChild[above]!; child !== -1; child = nextSibling[child]!) {
      otherPrecision[child] = Infinity;
      otherMean[child] = ownMean[above]!;
    }
    return;
  }
  let precision = fallingPrecision[above]! + own;
  let moment = fallingPrecision[above]! * fallingMean[above]! + own * ownMean[above]!;
  for (let child = firstChild[above]!; child !== -1; child = nextSibling[child]!) {
    otherPrecision[child] = precision;
    otherMean[child] = moment;
    precision += risingPrecision[child]!;
    moment += risingPrecision[child]! * risingMean[child]!;
  }
  precision = 0;
  moment = 0;
  for (let child = lastChild[above]!; child !== -1; child = previousSibling[child]!) {
    const sum = otherPrecision[child]! + precision;
    otherPrecision[child] = sum;
    otherMean[child] = sum > 0 ? (otherMean[child]! + moment) / sum : 0;
    precision += risingPrecision[child]!;
    moment += risingPrecision[child]! * risingMean[child]!;
  }
}
