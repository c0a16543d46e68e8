import type { Network } from './network.ts';

/**
 * Scale of the rate from the data alone, as if no observation had an error: the mean square of the independent contrasts
 * (Felsenstein 1985, American Naturalist 125: 1–15), squared trait units a million years; 0 where all values are equal.
 */
export function contrastRate({ parent, branchMa, ownPrecision, ownMean, observations }: Network): number {
  const mean = ownMean.slice();
  // of what was observed at a node or under it, in million years of change; Infinity where nothing was
  const variance = new Float64Array(parent.length);
  for (let node = 0; node < variance.length; node++) variance[node] = ownPrecision[node]! > 0 ? 0 : Infinity;
  let squares = 0;
  for (let node = 0; node < parent.length - 1; node++) {
    if (variance[node] === Infinity) continue;
    const above = parent[node]!;
    const reached = variance[node]! + branchMa[node]!;
    const before = variance[above]!;
    if (before === Infinity) {
      variance[above] = reached;
      mean[above] = mean[node]!;
      continue;
    }
    const spread = before + reached;
    const difference = mean[node]! - mean[above]!;
    squares += (difference * difference) / spread;
    mean[above]! += difference * (before / spread);
    variance[above] = before * (reached / spread);
  }
  return squares / Math.max(1, observations.length - 1);
}
