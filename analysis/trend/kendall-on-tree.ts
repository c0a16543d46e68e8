import { normalDraw, seededRandom } from '../random/index.ts';
import { requireTipsByLabel, rootOf, type DatedTree } from '../tree/index.ts';
import type { Observation } from '../estimate/index.ts';
import { kendallTest } from './kendall.ts';

/** Kendall's tau of a trait with time across related taxa, against trees on which nothing trends. */
export interface TreeKendall {
  readonly tau: number;
  /** Two-sided share of simulated data sets with a tau as far from 0, the data counted once. */
  readonly pValue: number;
  readonly draws: number;
}

/**
 * Kendall's tau of taxon means with time since the root, a description, with its probability by seeded simulation of Brownian
 * motion of the given rate on the dated tree, sampling variance included. The exact table of the test would be wrong here:
 * relatives are not independent.
 */
export function kendallOnTree(question: {
  readonly tree: DatedTree;
  readonly observations: readonly Observation[];
  readonly rate: number;
  readonly draws: number;
  readonly seed: string | number;
}): TreeKendall {
  const { tree, observations, rate, draws, seed } = question;
  const tips = requireTipsByLabel(tree);
  const nodes = observations.map(({ taxon }) => tips.get(taxon)!);
  const times = nodes.map((node) => -tree.ageMa[node]!);
  const { coefficient: tau } = kendallTest(
    times,
    observations.map(({ mean }) => mean),
  );
  const values = new Float64Array(tree.parent.length);
  let beyond = 0;
  for (let draw = 0; draw < draws; draw++) {
    const random = seededRandom(seed, 'kendall', draw);
    for (let node = rootOf(tree) - 1; node >= 0; node--)
      values[node] =
        values[tree.parent[node]!]! + Math.sqrt(rate * tree.branchLength[node]!) * normalDraw(random);
    const simulated = observations.map(
      ({ variance }, index) => values[nodes[index]!]! + Math.sqrt(variance) * normalDraw(random),
    );
    beyond += Number(Math.abs(tauOf(times, simulated)) >= Math.abs(tau) - 1e-12);
  }
  return { tau, pValue: (beyond + 1) / (draws + 1), draws };
}

/** Tau b where the second list has no ties. */
function tauOf(times: readonly number[], values: readonly number[]): number {
  let sum = 0;
  let pairs = 0;
  for (let i = 1; i < times.length; i++)
    for (let j = 0; j < i; j++) {
      sum += Math.sign(times[i]! - times[j]!) * Math.sign(values[i]! - values[j]!);
      pairs += Number(times[i] !== times[j]);
    }
  return sum / Math.sqrt(pairs * ((times.length * (times.length - 1)) / 2));
}
