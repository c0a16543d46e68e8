import { beliefAlongBranch, beliefAt, type Belief } from './belief.ts';
import type { Fit } from '../rate/fit.ts';
import { makeMessages, type Messages } from './messages.ts';
import type { Network } from './network.ts';
import { passDown } from './pass-down.ts';
import { passUp } from './pass-up.ts';
import { makeTimeMessages, passUpTrend, timeNetwork } from './pass-up-trend.ts';

/** Where a value is wanted: a node of the network, or a point on the branch above it, `upMa` before the node. */
export interface Place {
  readonly node: number;
  readonly upMa: number;
}

/** Everything known at one rate of the grid; its arrays are written over at the next. */
export interface AtRate {
  readonly network: Network;
  readonly messages: Messages;
  readonly rate: number;
  /** Index in the grid. */
  readonly step: number;
  readonly trend?: { readonly slope: number; readonly variance: number; readonly timeMessages: Messages };
}

/**
 * Runs both passes at every rate of the grid and hands over what is known at each, the slope of a trend solved anew every
 * time. Linear in nodes for a rate.
 */
export function forEachRate(fit: Fit, visit: (known: AtRate) => void): void {
  const { network } = fit;
  const messages = makeMessages(network.parent.length);
  if (fit.model === 'brownian') {
    fit.grid.rates.forEach((rate, step) => {
      passUp(network, rate, messages);
      passDown(network, rate, messages);
      visit({ network, messages, rate, step });
    });
    return;
  }
  const [time, timeMessages] = [timeNetwork(network), makeTimeMessages(messages)];
  fit.grid.rates.forEach((rate, step) => {
    const { slope, slopeVariance } = passUpTrend(network, time, rate, messages, timeMessages);
    passDown(network, rate, messages);
    passDown(time, rate, timeMessages);
    visit({ network, messages, rate, step, trend: { slope, variance: slopeVariance, timeMessages } });
  });
}

/** Mean and variance of a place at one rate, the slope's own uncertainty included. */
export function beliefOf(known: AtRate, place: Place): Belief {
  const belief = placeBelief(known.network, known.messages, known.rate, place);
  if (!known.trend) return belief;
  const reach = timeReach(known, place);
  return {
    mean: belief.mean + known.trend.slope * reach,
    variance: belief.variance + known.trend.variance * reach * reach,
  };
}

/** Time of a place less the time that its relatives stand for: how far a trend carries it. 0 without a trend. */
export function timeReach(known: AtRate, place: Place): number {
  if (!known.trend) return 0;
  const sinceRootMa = known.network.sinceRootMa[place.node]! - place.upMa;
  return sinceRootMa - placeBelief(known.network, known.trend.timeMessages, known.rate, place).mean;
}

function placeBelief(network: Network, messages: Messages, rate: number, { node, upMa }: Place): Belief {
  if (upMa === 0) return beliefAt(messages, node);
  return beliefAlongBranch(messages, node, rate, upMa, Math.max(0, network.branchMa[node]! - upMa));
}
