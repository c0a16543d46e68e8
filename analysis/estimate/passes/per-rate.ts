import { beliefAlongBranch, beliefAt, type Belief } from './belief.ts';
import type { Fit } from '../rate/fit.ts';
import { withColumnMessages, type ColumnMessages, type Messages } from './messages.ts';
import type { Network } from './network.ts';
import { passDown } from './pass-down.ts';
import { passUp } from './pass-up.ts';
import { passUpTrend, timeNetwork } from './pass-up-trend.ts';

/** A binding of its own keeps thousands of calls free of look-ups where modules are not bundled. */
const atNode = beliefAt;

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
  /** Index in the grid, and weight there. */
  readonly step: number;
  readonly weight: number;
  readonly trend?:
    { readonly slope: number; readonly variance: number; readonly timeMessages: Messages } | undefined;
}

/** Something read off at the rates of a grid one after another, and what comes of it at the end. */
export interface RateReading<T> {
  /** Which rates it needs, by index in the grid and weight; all of them if left out. */
  readonly needs?: (step: number, weight: number) => boolean;
  readonly atRate: (known: AtRate) => void;
  readonly result: () => T;
}

/** A reading of which something is made at the end. */
export function mapReading<A, B>(reading: RateReading<A>, make: (found: A) => B): RateReading<B> {
  return { ...reading, result: () => make(reading.result()) };
}

/** Two readings as one, so that the passes run once for both. */
export function both<A, B>(first: RateReading<A>, second: RateReading<B>): RateReading<readonly [A, B]> {
  const needs = ({ needs: own }: RateReading<unknown>, step: number, weight: number) =>
    own === undefined || own(step, weight);
  return {
    needs: (step, weight) => needs(first, step, weight) || needs(second, step, weight),
    atRate: (known) => {
      for (const reading of [first, second])
        if (needs(reading, known.step, known.weight)) reading.atRate(known);
    },
    result: () => [first.result(), second.result()],
  };
}

/**
 * What a reading finds: both passes are run at every rate that it needs, the slope of a trend solved anew every time.
 * Linear in nodes for a rate.
 */
export function readAtRates<T>(fit: Fit, reading: RateReading<T>): T {
  return withColumnMessages(fit.network.parent.length, (room) => {
    visitRates(fit, reading, room);
    return reading.result();
  });
}

function visitRates<T>(
  { model, network, grid }: Fit,
  { needs, atRate }: RateReading<T>,
  room: ColumnMessages,
) {
  const { messages } = room;
  const time = model === 'trend' ? timeNetwork(network) : undefined;
  for (let step = 0; step < grid.rates.length; step++) {
    const rate = grid.rates[step]!;
    const weight = grid.weights[step]!;
    if (needs && !needs(step, weight)) continue;
    const trend = time && solveTrend(network, time, rate, room);
    if (!trend) passUp(network, rate, messages);
    passDown(network, rate, messages);
    atRate({ network, messages, rate, step, weight, trend });
  }
}

/** Both columns carried up, and the times carried down; the values are still to be. */
function solveTrend(
  network: Network,
  time: Network,
  rate: number,
  room: ColumnMessages,
): NonNullable<AtRate['trend']> {
  const { slope, slopeVariance } = passUpTrend(network, time, rate, room);
  passDown(time, rate, room.columnMessages);
  return { slope, variance: slopeVariance, timeMessages: room.columnMessages };
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
  if (upMa === 0) return atNode(messages, node);
  return beliefAlongBranch(messages, node, rate, upMa, Math.max(0, network.branchMa[node]! - upMa));
}
