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
  const { atRoot, sums } = carryToRoot(tree, observations, pull, stationary);
  const underRoot = { ...atRoot };
  if (root === 'drawn') {
    join(atRoot, { precision: 1 / stationary, value: 0, column: 0 }, sums);
    sums.logs += Math.log(stationary * atRoot.precision);
  }
  // known for certain, the root says nothing of itself: all that is under it is a difference from it
  if (root === 'on-optimum') addSquares(sums, underRoot.value, underRoot.column);
  const optimum = sums.crossed / sums.columns;
  const pulledOff = (underRoot.value - optimum * underRoot.column) * Math.sqrt(underRoot.precision);
  return {
    logLikelihood: -0.5 * (sums.logs + sums.values - optimum * sums.crossed),
    optimum,
    rootValue: root === 'on-optimum' ? optimum : optimum + pulledOff / atRoot.precision,
  };
}

/**
 * What is known of a node's distance from the optimum: its precision, and that distance times the root of it, apart for the
 * values and for the column of the optimum (the distance is the one less the optimum times the other).
 */
interface Message {
  precision: number;
  value: number;
  column: number;
}

/** Differences met so far, as sums of squares and products, and logs of their variances. */
interface Differences {
  values: number;
  crossed: number;
  columns: number;
  logs: number;
}

/**
 * What all tips say at the root, and the differences met on the way. Each is a square added to others, and none is taken away
 * again: with a weak pull the whole is a millionth of its parts, and what subtraction leaves of it moves the optimum.
 */
function carryToRoot(
  tree: DatedTree,
  observations: readonly Observation[],
  pull: number,
  stationary: number,
): { atRoot: Message; sums: Differences } {
  const sums: Differences = { values: 0, crossed: 0, columns: 0, logs: 0 };
  const known = Array.from(tree.parent, (): Message => ({ precision: 0, value: 0, column: 0 }));
  const seen = observationOfTip(tree, observations);
  for (let node = 0; node < known.length - 1; node++) {
    const length = tree.branchLength[node]!;
    const kept = Math.exp(-pull * length);
    const drift = -stationary * Math.expm1(-2 * pull * length);
    const tip = seen.get(node);
    const own = tip ? observed(tip, drift, sums) : drifted(known[node]!, drift, sums);
    own.precision *= kept * kept;
    join(known[tree.parent[node]!]!, own, sums);
  }
  return { atRoot: known.at(-1)!, sums };
}

/** A tip's message above its drift. */
function observed({ mean, variance: own }: Observation, drift: number, sums: Differences): Message {
  const variance = own + drift;
  const root = 1 / Math.sqrt(variance);
  sums.logs += Math.log(2 * Math.PI * variance);
  return { precision: 1 / variance, value: mean * root, column: root };
}

/** A fork's message above its drift; it says nothing where nothing is known under it. */
function drifted({ precision, value, column }: Message, drift: number, sums: Differences): Message {
  const grown = 1 + drift * precision;
  const root = 1 / Math.sqrt(grown);
  sums.logs += Math.log(grown);
  return { precision: precision / grown, value: value * root, column: column * root };
}

/**
 * Two messages of one node made one, written over the first. It is a turn of the two: one part is what both say together, the
 * other how far they differ. One of which nothing is left at the node differs from the optimum itself.
 */
function join(one: Message, other: Message, sums: Differences): void {
  const precision = one.precision + other.precision;
  if (other.precision === 0) return addSquares(sums, other.value, other.column);
  const ownShare = Math.sqrt(one.precision / precision);
  const share = Math.sqrt(other.precision / precision);
  addSquares(sums, ownShare * other.value - share * one.value, ownShare * other.column - share * one.column);
  one.value = ownShare * one.value + share * other.value;
  one.column = ownShare * one.column + share * other.column;
  one.precision = precision;
}

function addSquares(sums: Differences, value: number, column: number): void {
  sums.values += value * value;
  sums.crossed += value * column;
  sums.columns += column * column;
}

function observationOfTip(tree: DatedTree, observations: readonly Observation[]): Map<number, Observation> {
  const tips = requireTipsByLabel(tree);
  return new Map(observations.map((observation) => [tips.get(observation.taxon)!, observation]));
}
