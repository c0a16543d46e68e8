import type { Network } from '../passes/network.ts';

/** Room for one pass of `trendInformation`: variance and mean time of each node with two derivatives each. */
export interface TrendRoom {
  readonly variance: Float64Array;
  readonly varianceSlope: Float64Array;
  readonly varianceBend: Float64Array;
  readonly time: Float64Array;
  readonly timeSlope: Float64Array;
  readonly timeBend: Float64Array;
}

/** Room for a network of so many nodes. */
export function makeTrendRoom(count: number): TrendRoom {
  return {
    variance: new Float64Array(count),
    varianceSlope: new Float64Array(count),
    varianceBend: new Float64Array(count),
    time: new Float64Array(count),
    timeSlope: new Float64Array(count),
    timeBend: new Float64Array(count),
  };
}

/**
 * What a trend adds to `rateInformation`: first less second derivative in ln(rate) of the log of the squared time
 * contrasts, carried exactly from tips to root. −1 without sampling variance: the slope takes one degree of freedom.
 */
export function trendInformation(network: Network, time: Network, rate: number, room: TrendRoom): number {
  const { parent, branchMa } = network;
  const { variance, varianceSlope, varianceBend, time: mean, timeSlope, timeBend } = room;
  setOut(network, time, room);
  let squares = 0;
  let squaresSlope = 0;
  let squaresBend = 0;
  for (let node = 0; node < parent.length - 1; node++) {
    if (variance[node] === Infinity) continue;
    const above = parent[node]!;
    const rise = rate * branchMa[node]!;
    const v = variance[node]! + rise;
    const v1 = varianceSlope[node]! + rise;
    const v2 = varianceBend[node]! + rise;
    const b = variance[above]!;
    if (b === Infinity) {
      variance[above] = v;
      varianceSlope[above] = v1;
      varianceBend[above] = v2;
      handUpTime(room, node, above);
      continue;
    }
    const b1 = varianceSlope[above]!;
    const b2 = varianceBend[above]!;
    const s = b + v;
    const s1 = b1 + v1;
    const s2 = b2 + v2;
    const d = mean[node]! - mean[above]!;
    const d1 = timeSlope[node]! - timeSlope[above]!;
    const d2 = timeBend[node]! - timeBend[above]!;
    // c = d / s and share = b / s, each with its derivatives
    const c = d / s;
    const c1 = (d1 - c * s1) / s;
    const c2 = (d2 - 2 * c1 * s1 - c * s2) / s;
    const share = b / s;
    const share1 = (b1 - share * s1) / s;
    const share2 = (b2 - 2 * share1 * s1 - share * s2) / s;
    squares += d * c;
    squaresSlope += d1 * c + d * c1;
    squaresBend += d2 * c + 2 * d1 * c1 + d * c2;
    mean[above]! += d * share;
    timeSlope[above]! += d1 * share + d * share1;
    timeBend[above]! += d2 * share + 2 * d1 * share1 + d * share2;
    variance[above] = share * v;
    varianceSlope[above] = share1 * v + share * v1;
    varianceBend[above] = share2 * v + 2 * share1 * v1 + share * v2;
  }
  const first = squaresSlope / squares;
  return first - squaresBend / squares + first * first;
}

/** Nothing is known of any node but what was observed there, and nothing of that depends on the rate. */
function setOut({ ownPrecision }: Network, time: Network, room: TrendRoom): void {
  for (let node = 0; node < ownPrecision.length; node++) room.variance[node] = 1 / ownPrecision[node]!;
  room.varianceSlope.fill(0);
  room.varianceBend.fill(0);
  room.time.set(time.ownMean);
  room.timeSlope.fill(0);
  room.timeBend.fill(0);
}

/** A fork of which nothing is known yet takes over the time of its first child, with both derivatives. */
function handUpTime({ time, timeSlope, timeBend }: TrendRoom, node: number, above: number): void {
  time[above] = time[node]!;
  timeSlope[above] = timeSlope[node]!;
  timeBend[above] = timeBend[node]!;
}
