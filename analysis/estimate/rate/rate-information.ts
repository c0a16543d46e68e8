import type { Network } from '../passes/network.ts';

/** Room for one pass of `rateInformation`. */
export interface InformationRoom {
  readonly precision: Float64Array;
  readonly slope: Float64Array;
  readonly bend: Float64Array;
}

/** Room for a network of so many nodes. */
export function makeInformationRoom(count: number): InformationRoom {
  return {
    precision: new Float64Array(count),
    slope: new Float64Array(count),
    bend: new Float64Array(count),
  };
}

/**
 * rate² tr((PC)²), twice the restricted likelihood's expected information on the log of the rate: the square of the
 * reference prior. From ln|V| + ln(1'V⁻¹1) by first and second derivatives in the log of the rate, both carried
 * exactly in one pass from tips to root; 0 without a pair of observations.
 */
export function rateInformation(network: Network, rate: number, room: InformationRoom): number {
  const { parent, branchMa, ownPrecision } = network;
  const { precision, slope, bend } = room;
  precision.set(ownPrecision);
  slope.fill(0);
  bend.fill(0);
  const root = parent.length - 1;
  let information = 0;
  for (let node = 0; node <= root; node++) {
    const known = precision[node]!;
    if (known === 0) continue;
    const variance = 1 / known;
    const first = slope[node]! * variance;
    const second = bend[node]! * variance;
    information += first * first - second;
    if (node === root) break;
    const above = parent[node]!;
    const rise = rate * branchMa[node]!;
    const reached = variance + rise;
    const relative = (first * variance + rise) / reached;
    // the branch's own part cancels between the first and the second derivative: never formed, no digits lost
    const excess = ((second - 2 * first * first) * variance) / reached;
    information += excess + relative * relative;
    precision[above]! += 1 / reached;
    slope[above]! += relative / reached;
    bend[above]! += (2 * relative * relative + excess) / reached;
  }
  return Math.max(0, information);
}
