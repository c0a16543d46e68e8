import type { DatedTree } from '../../tree/index.ts';
import { requireTipsByLabel } from '../../tree/index.ts';
import type { Observation } from '../observation.ts';

/** Log-likelihood of a pull to an optimum, with the optimum at its best. */
export interface PullLikelihood {
  readonly logLikelihood: number;
  readonly optimum: number;
  /** Value of the root: expected, or where it is known or free. */
  readonly rootValue: number;
}

/**
 * Where the root stands: drawn from the stationary distribution, on the optimum itself, or free, at its best value. With fossil
 * tips the first two are unlike models; the sensitivity line takes the first.
 */
export type PullRoot = 'drawn' | 'on-optimum' | 'free';

/**
 * Log-likelihood of a pull (a share a million years) to one optimum (Hansen 1997, Evolution 51: 1341–1351). With the root drawn,
 * as if left out, the covariance of two tips is rate/(2·pull)·exp(−pull·distance); with the root known it is that times
 * 1 − exp(−2·pull·shared path). Linear in nodes. NaN where a tip is exact and no time parts it from its fork.
 */
export function pullLogLikelihood(
  tree: DatedTree,
  observations: readonly Observation[],
  { pull, rate, root = 'drawn' }: { readonly pull: number; readonly rate: number; readonly root?: PullRoot },
): PullLikelihood {
  const stationary = rate / (2 * pull);
  const atRoot = gatherAtRoot(tree, observations, pull, stationary);
  // how sharply the root is known, from its own distribution and from what is under it
  const total = root === 'on-optimum' ? Infinity : atRoot.precision + (root === 'drawn' ? 1 / stationary : 0);
  const logs = atRoot.logs + (root === 'drawn' ? Math.log(stationary * total) : 0);
  const values = atRoot.values - atRoot.value ** 2 / total;
  const crossed = atRoot.crossed - (atRoot.value * atRoot.column) / total;
  const optimum = crossed / (atRoot.columns - atRoot.column ** 2 / total);
  return {
    logLikelihood: -0.5 * (logs + values - optimum * crossed),
    optimum,
    rootValue: optimum + (atRoot.value - optimum * atRoot.column) / total,
  };
}

/**
 * What all tips say at the root: the message of its value, and the sums of squares and products of values and of the column
 * of the optimum that do not hold it.
 */
function gatherAtRoot(
  tree: DatedTree,
  observations: readonly Observation[],
  pull: number,
  stationary: number,
) {
  const count = tree.parent.length;
  // each node's message is exp(−½ P x² + (V − optimum·U) x + constants), x from the optimum: values and its column apart
  const precision = new Float64Array(count);
  const valuePart = new Float64Array(count);
  const columnPart = new Float64Array(count);
  const seen = observationOfTip(tree, observations);
  let logs = 0;
  let values = 0;
  let crossed = 0;
  let columns = 0;
  for (let node = 0; node < count - 1; node++) {
    const above = tree.parent[node]!;
    const kept = Math.exp(-pull * tree.branchLength[node]!);
    const drift = -stationary * Math.expm1(-2 * pull * tree.branchLength[node]!);
    const tip = seen.get(node);
    let reached = 0;
    let value = 0;
    let column = 0;
    if (tip) {
      const variance = tip.variance + drift;
      reached = 1 / variance;
      value = tip.mean / variance;
      column = reached;
      logs += Math.log(2 * Math.PI * variance);
      values += tip.mean * value;
      crossed += value;
      columns += column;
    } else if (precision[node]! > 0) {
      const grown = 1 + drift * precision[node]!;
      reached = precision[node]! / grown;
      value = valuePart[node]! / grown;
      column = columnPart[node]! / grown;
      logs += Math.log(grown);
      const open = drift / grown;
      values -= open * valuePart[node]! ** 2;
      crossed -= open * valuePart[node]! * columnPart[node]!;
      columns -= open * columnPart[node]! ** 2;
    }
    precision[above]! += kept * kept * reached;
    valuePart[above]! += kept * value;
    columnPart[above]! += kept * column;
  }
  return {
    precision: precision[count - 1]!,
    value: valuePart[count - 1]!,
    column: columnPart[count - 1]!,
    logs,
    values,
    crossed,
    columns,
  };
}

function observationOfTip(tree: DatedTree, observations: readonly Observation[]): Map<number, Observation> {
  const tips = requireTipsByLabel(tree);
  return new Map(observations.map((observation) => [tips.get(observation.taxon)!, observation]));
}
