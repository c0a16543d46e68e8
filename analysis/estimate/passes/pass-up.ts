import type { Messages } from './messages.ts';
import type { Network } from './network.ts';

const logTwoPi = Math.log(2 * Math.PI);

/**
 * Carries what was observed from tips to root by precision and mean and returns the restricted log-likelihood of
 * Brownian motion at a rate in squared trait units a million years. The root's prior is flat, which is what makes
 * the likelihood the restricted one (Felsenstein 1973, American Journal of Human Genetics 25: 471–492).
 */
export function passUp(network: Network, rate: number, messages: Messages): number {
  const { parent, branchMa, ownPrecision, ownMean } = network;
  const { belowPrecision, belowMean, risingPrecision, risingMean } = messages;
  belowPrecision.set(ownPrecision);
  belowMean.set(ownMean);
  const root = parent.length - 1;
  let twiceLoss = 0;
  for (let node = 0; node < root; node++) {
    const precision = belowPrecision[node]!;
    if (precision === 0) {
      risingPrecision[node] = 0;
      continue;
    }
    const variance = 1 / precision + rate * branchMa[node]!;
    const rising = 1 / variance;
    const mean = belowMean[node]!;
    risingPrecision[node] = rising;
    risingMean[node] = mean;
    const above = parent[node]!;
    const before = belowPrecision[above]!;
    if (before === 0) {
      belowPrecision[above] = rising;
      belowMean[above] = mean;
      continue;
    }
    const spread = 1 / before + variance;
    const difference = mean - belowMean[above]!;
    twiceLoss += logTwoPi + Math.log(spread) + (difference * difference) / spread;
    belowMean[above]! += difference * (rising / (before + rising));
    belowPrecision[above] = before + rising;
  }
  return network.sharedLogLikelihood - 0.5 * twiceLoss;
}
