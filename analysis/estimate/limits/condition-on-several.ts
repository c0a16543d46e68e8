import { seededRandom } from '../../random/index.ts';
import type { Bounds } from './bounded-end.ts';
import { diagnoseChains } from './chain-diagnostics.ts';
import { covariancesWith } from '../passes/covariance.ts';
import type { Fit } from '../rate/fit.ts';
import { boundsOf, type PlacedLimit } from './limit-observation.ts';
import { gatherDraws } from './gather-draws.ts';
import { MixtureParts } from '../mixture.ts';
import { beliefOf, type AtRate, type RateReading } from '../passes/per-rate.ts';
import { summarise, type ValueEstimate } from '../posterior.ts';
import { invertSmall, type SmallMatrix } from './small-matrix.ts';
import { truncatedLattice, type WeightedPoints } from './truncated-lattice.ts';
import type { Effort } from '../rate/rate-grid.ts';
import { runTruncatedChain } from './truncated-chain.ts';

/** Estimates of nodes given several limits, and whether the chains agree well enough to print them. */
export interface SampledEstimates {
  readonly values: readonly ValueEstimate[];
  readonly splitRHat: number;
  readonly effectiveSize: number;
  /** Split R-hat under 1.01 and more than 400 effective draws; a lattice has no chains to judge. */
  readonly settled: boolean;
}

/** Four chains at a rate that carries weight; where it carries nearly none, one short one. */
const chains = { weighty: 4, slight: 1 } as const;

const counts = {
  weighty: { warmUp: 50, kept: 300 },
  slight: { warmUp: 50, kept: 100 },
} as const;

/** Every second rate of the full grid is sampled: its step is so fine that half of it costs less than draws do. */
const rateStride = { full: 2, light: 1 } as const;

/** Points of the lattice that stands for the chains at light effort. */
const latticePoints = 80;

/** Weight of a rate below which it is left out. */
const lightestRates = { full: 1e-6, light: 1e-3 } as const;

/** Weight of a rate below which its chains are not judged: they carry nothing that is printed. */
const judgedWeight = 1e-3;

/** The bounded specimens at one rate, and what follows from them for every node wanted. */
interface Joint {
  readonly means: readonly number[];
  readonly covariance: SmallMatrix;
  readonly precision: SmallMatrix;
  readonly nodes: readonly NodeGivenLimits[];
}

/** A node's mean, how far it follows each specimen, and its variance once all of these are known. */
interface NodeGivenLimits {
  readonly mean: number;
  readonly gains: readonly number[];
  readonly open: number;
}

/**
 * Reads nodes given several limits, each on its specimen's own twig: at each rate the bounded specimens are drawn
 * by Gibbs sampling in four chains seeded by key, and nodes are normal given each draw; at light effort a lattice takes the
 * place of the chains. Limits inform values, not the rate.
 */
export function readGivenSeveralLimits(
  fit: Fit,
  limits: readonly PlacedLimit[],
  nodes: readonly number[],
  options: { readonly level: number; readonly seed: string | number },
): RateReading<SampledEstimates> {
  const { effort } = fit;
  const bounds = limits.map(({ limit }) => boundsOf(limit));
  const parts = nodes.map(() => new MixtureParts());
  const covariances = limits.map(() => new Float64Array(fit.network.parent.length));
  const judgement = { splitRHat: 1, precisionSum: 0, judged: 0 };
  return {
    needs: (step, weight) => weight >= lightestRates[effort] && step % rateStride[effort] === 0,
    atRate: (known) => {
      const { weight } = known;
      limits.forEach(({ at }, i) => covariancesWith(known, at, covariances[i]!));
      const joint = joinLimits(known, limits, nodes, covariances);
      if (effort === 'light') return addLattice(joint, bounds, weight, parts);
      const kind = weight > judgedWeight ? 'weighty' : 'slight';
      const runs = drawLimits(joint, bounds, [options.seed, 'limits', known.step], kind);
      if (kind === 'weighty') judge(judgement, runs, weight);
      addDraws(joint, runs, weight, parts);
    },
    result: () => {
      const values = parts.map((part) => part.finish((mixture) => summarise(mixture, options.level)));
      if (effort === 'light') return { values, splitRHat: 1, effectiveSize: latticePoints, settled: true };
      const { splitRHat, judged, precisionSum } = judgement;
      const effectiveSize = judged ** 2 / precisionSum;
      return { values, splitRHat, effectiveSize, settled: splitRHat < 1.01 && effectiveSize > 400 };
    },
  };
}

/** Takes the chains of one rate into the judgement of all: the worst agreement, and the draws they are worth by weight. */
function judge(
  judgement: { splitRHat: number; precisionSum: number; judged: number },
  runs: readonly (readonly Float64Array[])[],
  weight: number,
): void {
  const found = runs[0]!.map((_, limit) => diagnoseChains(runs.map((run) => run[limit]!)));
  judgement.judged += weight;
  judgement.splitRHat = Math.max(judgement.splitRHat, ...found.map((one) => one.splitRHat));
  judgement.precisionSum += weight ** 2 / Math.min(...found.map((one) => one.effectiveSize));
}

/** What the limits and the nodes are to each other, from the covariance of every node with each limit's. */
function joinLimits(
  known: AtRate,
  limits: readonly PlacedLimit[],
  nodes: readonly number[],
  covariances: readonly Float64Array[],
): Joint {
  // two limits of one taxon without any twig are one value: a grain of variance keeps them apart
  const covariance = limits.map(({ limit }, i) =>
    limits.map(({ at }, j) =>
      i === j ? (covariances[i]![at]! + limit.twigVariance) * (1 + 1e-9) : covariances[i]![at]!,
    ),
  );
  const precision = invertSmall(covariance);
  return {
    means: limits.map(({ at }) => beliefOf(known, { node: at, upMa: 0 }).mean),
    covariance,
    precision,
    nodes: nodes.map((node) => {
      const { mean, variance } = beliefOf(known, { node, upMa: 0 });
      const withLimits = covariances.map((row) => row[node]!);
      const gains = precision.map((row) => dot(row, withLimits));
      return { mean, gains, open: Math.max(0, variance - dot(gains, withLimits)) };
    }),
  };
}

function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < one.length; k++) sum += one[k]! * other[k]!;
  return sum;
}

function drawLimits(
  joint: Joint,
  bounds: readonly Bounds[],
  keys: readonly (string | number)[],
  kind: 'weighty' | 'slight',
): Float64Array[][] {
  return Array.from({ length: chains[kind] }, (_, chain) =>
    runTruncatedChain({ ...joint, bounds }, seededRandom(...keys, chain), counts[kind]),
  );
}

/** Adds to each node's mixture what it is at the draws of all chains. */
function addDraws(
  joint: Joint,
  runs: readonly (readonly Float64Array[])[],
  weight: number,
  parts: readonly MixtureParts[],
): void {
  const kept = runs[0]![0]!.length;
  const ends = joint.means.length;
  const draws = Array.from({ length: ends }, (_, end) => {
    const joined = new Float64Array(runs.length * kept);
    runs.forEach((run, chain) => joined.set(run[end]!, chain * kept));
    return joined;
  });
  const weights = new Float64Array(runs.length * kept).fill(1 / (runs.length * kept));
  addPlaces(joint, { at: draws, weights }, weight, parts, 'full');
}

/** Adds to each node's mixture what it is at the points of the lattice. */
function addLattice(
  joint: Joint,
  bounds: readonly Bounds[],
  weight: number,
  parts: readonly MixtureParts[],
): void {
  const points = truncatedLattice(joint.means, joint.covariance, bounds, latticePoints);
  addPlaces(joint, points, weight, parts, 'light');
}

/** Adds to each node's mixture what it is if the bounded specimens are as given, at each of so many weighted points. */
function addPlaces(
  joint: Joint,
  points: WeightedPoints,
  weight: number,
  parts: readonly MixtureParts[],
  effort: Effort,
): void {
  const at = new Float64Array(points.weights.length);
  joint.nodes.forEach(({ mean, gains, open }, index) => {
    at.fill(0);
    points.at.forEach((ends, i) => {
      const pull = gains[i]!;
      const middle = joint.means[i]!;
      for (let k = 0; k < at.length; k++) at[k]! += pull * (ends[k]! - middle);
    });
    gatherDraws(parts[index]!, { at, weights: points.weights }, { weight, mean, variance: open }, effort);
  });
}
