import type { ColumnMessages } from './messages.ts';
import type { Network } from './network.ts';

const logTwoPi = Math.log(2 * Math.PI);

/** What one pass says of a trend at one rate. */
export interface TrendPass {
  /** Restricted log-likelihood with root value and slope at their best. */
  readonly restricted: number;
  /** Log-likelihood with root value and slope at their best. */
  readonly full: number;
  /** Slope in trait units a million years, and its variance at this rate. */
  readonly slope: number;
  readonly slopeVariance: number;
  /** Mean of the values at the root, the mean of the times that belongs to it, and its variance at this rate. */
  readonly centre: { readonly value: number; readonly time: number; readonly variance: number };
}

/** The network with the time since the root in place of every observed value: the column that a trend adds. */
export function timeNetwork(network: Network): Network {
  const ownMean = new Float64Array(network.parent.length);
  for (const node of network.observedAt) ownMean[node] = network.sinceRootMa[node]!;
  return { ...network, ownMean };
}

/**
 * Carries values and times up together and solves for the slope by generalised least squares: the differences met at
 * each fork are the contrasts of both. Slope and its variance are NaN where no time separates the observations.
 */
export function passUpTrend(
  network: Network,
  time: Network,
  rate: number,
  { messages, columnMessages }: ColumnMessages,
): TrendPass {
  const { parent, branchMa } = network;
  const { belowPrecision, belowMean, risingPrecision, risingMean } = messages;
  const { belowMean: belowTime, risingMean: risingTime } = columnMessages;
  setOut(network, time, { messages, columnMessages });
  const root = parent.length - 1;
  let logSpreads = 0;
  let valueSquares = 0;
  let products = 0;
  let timeSquares = 0;
  for (let node = 0; node < root; node++) {
    const precision = belowPrecision[node]!;
    risingPrecision[node] = 0;
    if (precision === 0) continue;
    const variance = 1 / precision + rate * branchMa[node]!;
    const rising = 1 / variance;
    risingPrecision[node] = rising;
    risingMean[node] = belowMean[node]!;
    risingTime[node] = belowTime[node]!;
    const above = parent[node]!;
    const before = belowPrecision[above]!;
    const spread = 1 / before + variance;
    const value = belowMean[node]! - belowMean[above]!;
    const elapsed = belowTime[node]! - belowTime[above]!;
    if (before > 0) {
      logSpreads += logTwoPi + Math.log(spread);
      valueSquares += (value * value) / spread;
      products += (value * elapsed) / spread;
      timeSquares += (elapsed * elapsed) / spread;
    }
    const share = before > 0 ? rising / (before + rising) : 1;
    belowMean[above]! += value * share;
    belowTime[above]! += elapsed * share;
    belowPrecision[above] = before + rising;
  }
  const centre = { value: belowMean[root]!, time: belowTime[root]!, variance: 1 / belowPrecision[root]! };
  const shared = network.sharedLogLikelihood - 0.5 * logSpreads;
  return solveContrasts({ shared, valueSquares, products, timeSquares }, centre);
}

/** Sums over the contrasts, and the part of the log-likelihood that no slope changes. */
interface Contrasts {
  readonly shared: number;
  readonly valueSquares: number;
  readonly products: number;
  readonly timeSquares: number;
}

/** The slope at its best by least squares, and what both likelihoods are there. */
function solveContrasts(
  { shared, valueSquares, products, timeSquares }: Contrasts,
  centre: TrendPass['centre'],
): TrendPass {
  const contrasts = shared - 0.5 * (valueSquares - (products * products) / timeSquares);
  return {
    restricted: contrasts + 0.5 * logTwoPi - 0.5 * Math.log(timeSquares),
    full: contrasts - 0.5 * logTwoPi - 0.5 * Math.log(centre.variance),
    slope: products / timeSquares,
    slopeVariance: 1 / timeSquares,
    centre,
  };
}

/** Nothing is known of any node but what was observed there. */
function setOut(network: Network, time: Network, { messages, columnMessages }: ColumnMessages): void {
  messages.belowPrecision.set(network.ownPrecision);
  messages.belowMean.set(network.ownMean);
  columnMessages.belowMean.set(time.ownMean);
}
