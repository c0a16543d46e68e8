import type { DatedTree } from '../../tree/index.ts';
import { requireTipsByLabel } from '../../tree/index.ts';
import type { Observation } from '../observation.ts';

/** Log-likelihood of a pull to an optimum, with the optimum at its best. */
export interface PullLikelihood {
  readonly logLikelihood: number;
  readonly optimum: number;
}

/**
 * Log-likelihood of a pull (a share a million years) to one optimum, the root drawn from the stationary distribution:
 * covariance rate/(2·pull)·exp(−pull·distance) (Hansen 1997, Evolution 51: 1341–1351). Linear in nodes. NaN where a tip is
 * exact and no time parts it from its fork.
 */
export function pullLogLikelihood(
  tree: DatedTree,
  observations: readonly Observation[],
  { pull, rate }: { readonly pull: number; readonly rate: number },
): PullLikelihood {
  const count = tree.parent.length;
  // each node's message is exp(−½ P x² + (V + optimum·U) x + constants): values and the column of the optimum apart
  const precision = new Float64Array(count);
  const valuePart = new Float64Array(count);
  const columnPart = new Float64Array(count);
  const seen = observationOfTip(tree, observations);
  const stationary = rate / (2 * pull);
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
  const root = count - 1;
  const total = 1 / stationary + precision[root]!;
  logs += Math.log(stationary * total);
  values -= valuePart[root]! ** 2 / total;
  crossed -= (valuePart[root]! * columnPart[root]!) / total;
  columns -= columnPart[root]! ** 2 / total;
  const optimum = crossed / columns;
  return { logLikelihood: -0.5 * (logs + values - optimum * crossed), optimum };
}

function observationOfTip(tree: DatedTree, observations: readonly Observation[]): Map<number, Observation> {
  const tips = requireTipsByLabel(tree);
  return new Map(observations.map((observation) => [tips.get(observation.taxon)!, observation]));
}
