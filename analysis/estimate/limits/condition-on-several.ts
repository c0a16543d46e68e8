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

/** The bounded specimens at one rate, and their covariance with every node wanted. */
interface Joint {
  readonly means: Float64Array;
  readonly covariance: SmallMatrix;
  readonly precision: SmallMatrix;
  readonly gains: readonly Float64Array[];
  readonly nodeMeans: Float64Array;
  readonly open: Float64Array;
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
  const judgement = { splitRHat: 1, precisionSum: 0, judged: 0 };
  return {
    needs: (step, weight) => weight >= lightestRates[effort] && step % rateStride[effort] === 0,
    atRate: (known) => {
      const { weight } = known;
      const joint = joinLimits(known, limits, nodes);
      if (effort === 'light') return addLattice(joint, bounds, weight, parts);
      const kind = weight > judgedWeight ? 'weighty' : 'slight';
      const runs = drawLimits(joint, bounds, [options.seed, 'limits', known.step], kind);
      if (kind === 'weighty') judge(judgement, runs, weight);
      addDraws(joint, runs, weight, parts);
    },
    result: () => {
      const values = parts.map((part) => summarise(part.mixture(), options.level));
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

function joinLimits(known: AtRate, limits: readonly PlacedLimit[], nodes: readonly number[]): Joint {
  const covariances = limits.map(({ at }) => {
    const row = new Float64Array(known.network.parent.length);
    covariancesWith(known, at, row);
    return row;
  });
  const covariance = limits.map(({ limit }, i) =>
    Float64Array.from(limits, ({ at }, j) => covariances[i]![at]! + (i === j ? limit.twigVariance : 0)),
  );
  // two limits of one taxon without any twig are one value: a grain of variance keeps them apart
  covariance.forEach((row, i) => (row[i]! *= 1 + 1e-9));
  const precision = invertSmall(covariance);
  const gains = nodes.map((node) =>
    Float64Array.from(limits, (_, i) =>
      precision[i]!.reduce((sum, part, j) => sum + part * covariances[j]![node]!, 0),
    ),
  );
  const beliefs = nodes.map((node) => beliefOf(known, { node, upMa: 0 }));
  return {
    means: Float64Array.from(limits, ({ at }) => beliefOf(known, { node: at, upMa: 0 }).mean),
    covariance,
    precision,
    gains,
    nodeMeans: Float64Array.from(beliefs, ({ mean }) => mean),
    open: Float64Array.from(beliefs, ({ variance }, index) =>
      Math.max(
        0,
        variance - gains[index]!.reduce((sum, gain, i) => sum + gain * covariances[i]![nodes[index]!]!, 0),
      ),
    ),
  };
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
  joint.gains.forEach((gain, index) => {
    at.fill(0);
    points.at.forEach((ends, i) => {
      const pull = gain[i]!;
      const mean = joint.means[i]!;
      for (let k = 0; k < at.length; k++) at[k]! += pull * (ends[k]! - mean);
    });
    const known = { weight, mean: joint.nodeMeans[index]!, variance: joint.open[index]! };
    gatherDraws(parts[index]!, { at, weights: points.weights }, known, effort);
  });
}
