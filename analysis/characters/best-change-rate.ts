import { findMaximum } from '../statistics/index.ts';
import { rootOf, type Tree } from '../tree/index.ts';
import { changeLogLikelihood, type ChangeQuestion } from './change-likelihood.ts';
import type { ChangeRates } from './change-rates.ts';

/** The rate of largest likelihood. */
export interface BestChangeRate {
  /** Changes a million years; 0 or Infinity on a bound. */
  readonly rate: number;
  readonly logLikelihood: number;
  /** The likelihood grows all the way to no change, or to changes without end: a finding on the character, not a rate. */
  readonly onBound?: 'no-change' | 'no-end';
}

/** Changes over the depth of the tree at the two ends of the search, as powers of e: none to be seen, and more than leave a trace. */
const ends = { none: -14, countless: 7 } as const;

/**
 * Rate of largest likelihood of a model with one rate, by a search over its log. Some characters have none: one that never
 * varies is likeliest without change, and one that changes on every other twig is likelier the faster it changes.
 */
export function findBestChangeRate(
  question: Omit<ChangeQuestion, 'rates'>,
  ratesOf: (states: number, rate: number) => ChangeRates,
): BestChangeRate {
  const depthMyr = depthOf(question.tree);
  if (!(depthMyr > 0)) throw new Error('a rate of change needs a tree with branches in million years');
  const at = (rate: number) =>
    changeLogLikelihood({ ...question, rates: ratesOf(question.states.length, rate) });
  const of = (logChanges: number) => at(Math.exp(logChanges) / depthMyr);
  let best: number = ends.none;
  let highest = of(best);
  for (let place = ends.none + 0.5; place <= ends.countless; place += 0.5) {
    const here = of(place);
    if (here <= highest) continue;
    best = place;
    highest = here;
  }
  const [still, countless] = [at(0), of(ends.countless)];
  const inside = findMaximum(of, Math.max(ends.none, best - 0.5), Math.min(ends.countless, best + 0.5), 1e-9);
  if (still >= inside.value - 1e-9) return { rate: 0, logLikelihood: still, onBound: 'no-change' };
  if (countless >= inside.value - 1e-9)
    return { rate: Infinity, logLikelihood: countless, onBound: 'no-end' };
  return { rate: Math.exp(inside.at) / depthMyr, logLikelihood: inside.value };
}

/** Longest way from the root to a tip, million years. */
function depthOf(tree: Tree): number {
  const depth = new Float64Array(tree.parent.length);
  for (let node = rootOf(tree) - 1; node >= 0; node--)
    depth[node] = depth[tree.parent[node]!]! + tree.branchLength[node]!;
  return depth.reduce((most, each) => Math.max(most, each), 0);
}
