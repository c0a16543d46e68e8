import { seededRandom } from '../../random/index.ts';
import type { Bounds } from './bounded-end.ts';
import { diagnoseChains } from './chain-diagnostics.ts';
import { covariancesWith } from '../passes/covariance.ts';
import type { Fit } from '../rate/fit.ts';
import { boundsOf, type LimitObservation } from './limit-observation.ts';
import { MixtureParts } from '../mixture.ts';
import { beliefOf, forEachRate, type AtRate } from '../passes/per-rate.ts';
import { summarise, type ValueEstimate } from '../posterior.ts';
import { invertSmall, type SmallMatrix } from './small-matrix.ts';
import { truncatedLattice } from './truncated-lattice.ts';
import { runTruncatedChain } from './truncated-chain.ts';

/** Estimates of nodes given several limits, and whether the chains agree well enough to print them. */
export interface SampledEstimates {
  readonly values: readonly ValueEstimate[];
  readonly splitRHat: number;
  readonly effectiveSize: number;
  /** Split R-hat under 1.01 and more than 400 effective draws; a lattice has no chains to judge. */
  readonly settled: boolean;
}

const chains = 4;

const counts = { warmUp: 50, kept: 300 } as const;

/** Every so many draws enter the mixture: near draws say the same. */
const thinning = 10;

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
 * Estimates of nodes given several limits, each on its specimen's own twig: at each rate the bounded specimens are drawn
 * by Gibbs sampling in four chains seeded by key, and nodes are normal given each draw; at light effort a lattice takes the
 * place of the chains. Limits inform values, not the rate.
 */
export function conditionOnSeveral(
  fit: Fit,
  limits: readonly { readonly limit: LimitObservation; readonly at: number }[],
  nodes: readonly number[],
  options: { readonly level: number; readonly seed: string | number },
): SampledEstimates {
  const bounds = limits.map(({ limit }) => boundsOf(limit));
  const parts = nodes.map(() => new MixtureParts());
  let [splitRHat, precisionSum] = [1, 0];
  forEachRate(fit, (known) => {
    const weight = fit.grid.weights[known.step]!;
    if (weight < lightestRates[fit.effort]) return;
    const joint = joinLimits(known, limits, nodes);
    if (fit.effort === 'light') return addLattice(joint, bounds, weight, parts);
    const runs = drawLimits(joint, bounds, [options.seed, 'limits', known.step]);
    if (weight > judgedWeight) {
      const found = bounds.map((_, i) => diagnoseChains(runs.map((run) => run[i]!)));
      splitRHat = Math.max(splitRHat, ...found.map((one) => one.splitRHat));
      precisionSum += weight ** 2 / Math.min(...found.map((one) => one.effectiveSize));
    }
    addDraws(joint, runs, weight, parts);
  });
  const effectiveSize = fit.effort === 'light' ? latticePoints : 1 / precisionSum;
  const settled = fit.effort === 'light' || (splitRHat < 1.01 && effectiveSize > 400);
  const values = parts.map((part) => summarise(part.mixture(), options.level));
  return { values, splitRHat, effectiveSize, settled };
}

function joinLimits(
  known: AtRate,
  limits: readonly { readonly limit: LimitObservation; readonly at: number }[],
  nodes: readonly number[],
): Joint {
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
): Float64Array[][] {
  return Array.from({ length: chains }, (_, chain) =>
    runTruncatedChain({ ...joint, bounds }, seededRandom(...keys, chain), counts),
  );
}

/** Adds to each node's mixture a normal distribution for every draw kept. */
function addDraws(
  joint: Joint,
  runs: readonly (readonly Float64Array[])[],
  weight: number,
  parts: readonly MixtureParts[],
): void {
  const kept = runs[0]![0]!.length;
  const share = weight / (runs.length * Math.ceil(kept / thinning));
  for (const run of runs)
    for (let draw = 0; draw < kept; draw += thinning)
      addPoint(
        joint,
        run.map((values) => values[draw]!),
        share,
        parts,
      );
}

/** Adds to each node's mixture a normal distribution for every point of the lattice. */
function addLattice(
  joint: Joint,
  bounds: readonly Bounds[],
  weight: number,
  parts: readonly MixtureParts[],
): void {
  const points = truncatedLattice(joint.means, joint.covariance, bounds, latticePoints);
  points.weights.forEach((share, point) =>
    addPoint(
      joint,
      points.at.map((values) => values[point]!),
      weight * share,
      parts,
    ),
  );
}

/** Adds to each node's mixture what it is if the bounded specimens are as given. */
function addPoint(
  joint: Joint,
  ends: readonly number[],
  weight: number,
  parts: readonly MixtureParts[],
): void {
  joint.gains.forEach((gain, index) => {
    const shift = gain.reduce((sum, part, i) => sum + part * (ends[i]! - joint.means[i]!), 0);
    parts[index]!.add(weight, joint.nodeMeans[index]! + shift, joint.open[index]!);
  });
}
