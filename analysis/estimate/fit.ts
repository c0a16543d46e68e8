import { findMaximum } from '../statistics/index.ts';
import { makeMessages, type Messages } from './messages.ts';
import type { Network } from './network.ts';
import { passDown } from './pass-down.ts';
import { passUp } from './pass-up.ts';
import { contrastRate, findRateGrid, logRateWeight, type RateGrid } from './rate-grid.ts';

/** Brownian motion fitted to a network. Rates are in squared trait units a million years. */
export interface BrownianFit {
  readonly network: Network;
  readonly grid: RateGrid;
  /** Rate of largest restricted likelihood, 0 where the likelihood grows all the way down to no change. */
  readonly rateReml: number;
  readonly logLikelihoodReml: number;
  /** Rate of largest likelihood and that likelihood; 0 as above. */
  readonly rateMl: number;
  readonly logLikelihoodMl: number;
}

/** How far below the data's own scale, in ln(rate), a rate is nothing beside any sampling variance. */
const noRateDepth = 45;

/** Fits Brownian motion, the rate integrated; undefined where the values leave no rate because exact ones are all equal. */
export function findBrownianFit(network: Network): BrownianFit | undefined {
  const top = topLogRate(network);
  if (top === undefined) return undefined;
  const grid = findRateGrid(logRateWeight(network), top);
  if (!grid) return undefined;
  const messages = makeMessages(network.parent.length);
  const restricted = (logRate: number) => passUp(network, Math.exp(logRate), messages);
  const full = (logRate: number) => fullLogLikelihood(network, Math.exp(logRate), messages);
  const reml = largestOverRates(restricted, top);
  const ml = largestOverRates(full, top);
  return {
    network,
    grid,
    rateReml: reml.rate,
    logLikelihoodReml: reml.value,
    rateMl: ml.rate,
    logLikelihoodMl: ml.value,
  };
}

/** Log of the scale of the rate: from the values, or where these are all equal from their sampling variances. */
function topLogRate(network: Network): number | undefined {
  const fromValues = contrastRate(network);
  if (fromValues > 0) return Math.log(fromValues);
  const variances = network.observations.map((observation) => observation.variance);
  const depthMa = network.sinceRootMa.reduce((deepest, time) => Math.max(deepest, time), 0);
  const largest = Math.max(0, ...variances);
  return largest > 0 && depthMa > 0 ? Math.log(largest / depthMa) : undefined;
}

/** Log-likelihood at a rate with the root's value at its best, from the restricted one and the root's precision. */
export function fullLogLikelihood(network: Network, rate: number, messages: Messages): number {
  const restricted = passUp(network, rate, messages);
  const atRoot = messages.belowPrecision[network.parent.length - 1]!;
  return restricted + 0.5 * Math.log(atRoot / (2 * Math.PI));
}

function largestOverRates(of: (logRate: number) => number, top: number): { rate: number; value: number } {
  const bottom = of(top - noRateDepth);
  let [best, atBest] = [top - noRateDepth, bottom];
  for (let down = -4; down < 30; down += 0.5) {
    const value = of(top - down);
    if (value > atBest) [best, atBest] = [top - down, value];
  }
  const found = findMaximum(of, best - 0.5, best + 0.5, 1e-9);
  return found.value > bottom + 1e-9
    ? { rate: Math.exp(found.at), value: found.value }
    : { rate: 0, value: bottom };
}

/** Runs both passes at every rate of the grid and hands over the messages of each. */
export function forEachRate(
  fit: BrownianFit,
  visit: (messages: Messages, rate: number, step: number) => void,
): void {
  const messages = makeMessages(fit.network.parent.length);
  fit.grid.rates.forEach((rate, step) => {
    passUp(fit.network, rate, messages);
    passDown(fit.network, rate, messages);
    visit(messages, rate, step);
  });
}
