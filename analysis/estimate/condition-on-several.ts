import { seededRandom } from '../random/index.ts';
import type { Bounds } from './bounded-end.ts';
import { diagnoseChains } from './chain-diagnostics.ts';
import { covariancesWith } from './covariance.ts';
import type { Fit } from './fit.ts';
import { boundsOf, type LimitObservation } from './limit-observation.ts';
import { MixtureParts } from './mixture.ts';
import { beliefOf, forEachRate, type AtRate } from './per-rate.ts';
import { summarise, type ValueEstimate } from './posterior.ts';
import { invertSmall, type SmallMatrix } from './small-matrix.ts';
import { runTruncatedChain } from './truncated-chain.ts';

/** Estimates of nodes given several limits, and whether the chains agree well enough to print them. */
export interface SampledEstimates {
  readonly values: readonly ValueEstimate[];
  readonly splitRHat: number;
  readonly effectiveSize: number;
  /** Split R-hat under 1.01 (1.05 for light effort) and more than 400 effective draws. */
  readonly settled: boolean;
}

const chains = 4;

/** Rounds of a chain, and how well chains must agree: light is for values that are only one of many in a range. */
const efforts = {
  full: { counts: { warmUp: 50, kept: 300 }, largestRHat: 1.01 },
  light: { counts: { warmUp: 30, kept: 100 }, largestRHat: 1.05 },
} as const;

/** Every so many draws enter the mixture: near draws say the same. */
const thinning = 10;

/** Weight of a rate below which its chains are not judged: they carry nothing that is printed. */
const judgedWeight = 1e-3;

/** Weight of a rate below which it is left out. */
const lightestRate = 1e-6;

/** The bounded specimens at one rate, and their covariance with every node wanted. */
interface Joint {
  readonly means: Float64Array;
  readonly precision: SmallMatrix;
  readonly gains: readonly Float64Array[];
  readonly nodeMeans: Float64Array;
  readonly open: Float64Array;
}

/**
 * Estimates of nodes given several limits, each on its specimen's own twig: at each rate the bounded specimens are drawn
 * by Gibbs sampling in four chains seeded by key, and nodes are normal given each draw. Limits inform values, not
 * the rate.
 */
export function conditionOnSeveral(
  fit: Fit,
  limits: readonly { readonly limit: LimitObservation; readonly at: number }[],
  nodes: readonly number[],
  options: { readonly level: number; readonly seed: string | number },
): SampledEstimates {
  const { counts, largestRHat } = efforts[fit.effort];
  const bounds = limits.map(({ limit }) => boundsOf(limit));
  const parts = nodes.map(() => new MixtureParts());
  let [splitRHat, precisionSum] = [1, 0];
  forEachRate(fit, (known) => {
    const weight = fit.grid.weights[known.step]!;
    const joint = joinLimits(known, limits, nodes);
    if (weight < lightestRate) return;
    const runs = drawLimits(joint, bounds, [options.seed, 'limits', known.step], counts);
    if (weight > judgedWeight) {
      const judged = bounds.map((_, i) => diagnoseChains(runs.map((run) => run[i]!)));
      splitRHat = Math.max(splitRHat, ...judged.map((one) => one.splitRHat));
      precisionSum += weight ** 2 / Math.min(...judged.map((one) => one.effectiveSize));
    }
    addDraws(joint, runs, weight, parts);
  });
  const effectiveSize = 1 / precisionSum;
  const values = parts.map((part) => summarise(part.mixture(), options.level));
  return { values, splitRHat, effectiveSize, settled: splitRHat < largestRHat && effectiveSize > 400 };
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
  counts: { readonly warmUp: number; readonly kept: number },
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
      joint.gains.forEach((gain, index) => {
        const shift = gain.reduce((sum, part, i) => sum + part * (run[i]![draw]! - joint.means[i]!), 0);
        parts[index]!.add(share, joint.nodeMeans[index]! + shift, joint.open[index]!);
      });
}
