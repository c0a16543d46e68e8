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
  setOut(network, time, room);
  const squares: TimeSquares = { sum: 0, slope: 0, bend: 0 };
  for (let node = 0; node < parent.length - 1; node++) {
    if (room.variance[node] === Infinity) continue;
    const above = parent[node]!;
    growBranch(room, node, rate * branchMa[node]!);
    if (room.variance[above] === Infinity) handUp(room, node, above);
    else meet(room, node, above, squares);
  }
  const first = squares.slope / squares.sum;
  return first - squares.bend / squares.sum + first * first;
}

/** Squared time contrasts met so far, with two derivatives. */
interface TimeSquares {
  sum: number;
  slope: number;
  bend: number;
}

/** Variance gained along a branch; it is in proportion to the rate, and so are both its derivatives in the log of it. */
function growBranch({ variance, varianceSlope, varianceBend }: TrendRoom, node: number, rise: number): void {
  variance[node]! += rise;
  varianceSlope[node]! += rise;
  varianceBend[node]! += rise;
}

/** Two times meet at a fork: their difference counts, and the fork takes their mean by precision. */
function meet(room: TrendRoom, node: number, above: number, squares: TimeSquares): void {
  const { variance, varianceSlope, varianceBend, time, timeSlope, timeBend } = room;
  const [v, v1, v2] = [variance[node]!, varianceSlope[node]!, varianceBend[node]!];
  const [b, b1, b2] = [variance[above]!, varianceSlope[above]!, varianceBend[above]!];
  const s = b + v;
  const s1 = b1 + v1;
  const s2 = b2 + v2;
  const d = time[node]! - time[above]!;
  const d1 = timeSlope[node]! - timeSlope[above]!;
  const d2 = timeBend[node]! - timeBend[above]!;
  // c = d / s and share = b / s, each with its derivatives
  const c = d / s;
  const c1 = (d1 - c * s1) / s;
  const c2 = (d2 - 2 * c1 * s1 - c * s2) / s;
  const share = b / s;
  const share1 = (b1 - share * s1) / s;
  const share2 = (b2 - 2 * share1 * s1 - share * s2) / s;
  squares.sum += d * c;
  squares.slope += d1 * c + d * c1;
  squares.bend += d2 * c + 2 * d1 * c1 + d * c2;
  time[above]! += d * share;
  timeSlope[above]! += d1 * share + d * share1;
  timeBend[above]! += d2 * share + 2 * d1 * share1 + d * share2;
  variance[above] = share * v;
  varianceSlope[above] = share1 * v + share * v1;
  varianceBend[above] = share2 * v + 2 * share1 * v1 + share * v2;
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

/** A fork of which nothing is known yet takes over everything of its first child. */
function handUp(room: TrendRoom, node: number, above: number): void {
  const { variance, varianceSlope, varianceBend, time, timeSlope, timeBend } = room;
  variance[above] = variance[node]!;
  varianceSlope[above] = varianceSlope[node]!;
  varianceBend[above] = varianceBend[node]!;
  time[above] = time[node]!;
  timeSlope[above] = timeSlope[node]!;
  timeBend[above] = timeBend[node]!;
}
