import { findRoot } from '../../statistics/index.ts';
import { boundedPoints, boundedShareBelow, finestOfMoments, type Bounds } from './bounded-end.ts';
import { covariancesWith } from '../passes/covariance.ts';
import type { Fit } from '../rate/fit.ts';
import { gatherDraws } from './gather-draws.ts';
import { boundsOf, type PlacedLimit } from './limit-observation.ts';
import { mixtureMoments, MixtureParts } from '../mixture.ts';
import { beliefOf, type RateReading } from '../passes/per-rate.ts';
import { summarise, type ValueEstimate } from '../posterior.ts';
import type { Effort } from '../rate/rate-grid.ts';

/** At one rate: a node's mean and variance, the bounded specimen's, and their covariance. */
interface AtOneRate {
  readonly weight: number;
  readonly mean: number;
  readonly variance: number;
  readonly endMean: number;
  readonly endVariance: number;
  readonly covariance: number;
}

/** Share of a node's variance below which what a limit leaves open counts as nothing. */
const sharpShare = 1e-7;

/** Squared correlation with the bounded specimen below which a limit does not reach a node. */
const farShare = 1e-12;

/** Weight of a rate below which it is left out of a limit's mixture. */
const lightestRates = { full: 1e-9, light: 1e-3 } as const;

/**
 * Reads nodes given one limit on a specimen's own twig: at each rate the rest of the tree is normal given the
 * specimen's value, which is integrated over its side of the limit by quadrature. The limit informs values, not the
 * rate: the grid keeps its weights.
 */
export function readGivenOneLimit(
  fit: Fit,
  { limit, at }: PlacedLimit,
  nodes: readonly number[],
  level: number,
): RateReading<ValueEstimate[]> {
  const bounds = boundsOf(limit);
  const rows = nodes.map((): AtOneRate[] => []);
  const covariances = new Float64Array(fit.network.parent.length);
  return {
    needs: (_, weight) => weight >= lightestRates[fit.effort],
    atRate: (known) => {
      const { weight } = known;
      const end = beliefOf(known, { node: at, upMa: 0 });
      const endVariance = end.variance + limit.twigVariance;
      covariancesWith(known, at, covariances);
      nodes.forEach((node, index) => {
        const { mean, variance } = beliefOf(known, { node, upMa: 0 });
        const covariance = covariances[node]!;
        rows[index]!.push({ weight, mean, variance, endMean: end.mean, endVariance, covariance });
      });
    },
    result: () => rows.map((row) => conditionNode(row, bounds, level, fit.effort)),
  };
}

function conditionNode(
  row: readonly AtOneRate[],
  bounds: Bounds,
  level: number,
  effort: Effort,
): ValueEstimate {
  const open = row.map(({ variance, covariance, endVariance }) =>
    endVariance > 0 ? Math.max(0, variance - covariance ** 2 / endVariance) : variance,
  );
  const reached = row.some(
    ({ variance, covariance, endVariance }) => covariance ** 2 > farShare * variance * endVariance,
  );
  if (reached && row.every(({ variance }, step) => open[step]! <= sharpShare * variance))
    return summariseSharp(row, bounds, level);
  const parts = new MixtureParts();
  row.forEach((known, step) => {
    const { weight, mean, endMean, endVariance, covariance } = known;
    if (!reached) return parts.add(weight, mean, known.variance);
    const pull = covariance / endVariance;
    const finest = Math.sqrt(open[step]!) / (Math.abs(pull) * Math.sqrt(endVariance));
    const points = boundedPoints(endMean, endVariance, bounds, { finest, effort });
    if (effort === 'light') {
      for (let k = 0; k < points.at.length; k++) points.at[k] = pull * (points.at[k]! - endMean);
      return gatherDraws(parts, points, { weight, mean, variance: open[step]! }, effort);
    }
    for (let k = 0; k < points.at.length; k++)
      parts.add(weight * points.weights[k]!, mean + pull * (points.at[k]! - endMean), open[step]!);
  });
  return parts.finish((mixture) => summarise(mixture, level));
}

/** Where the node is the bounded value itself, on a twig of no variance: truncated normal distributions, mixed. */
function summariseSharp(row: readonly AtOneRate[], bounds: Bounds, level: number): ValueEstimate {
  const below = (at: number) =>
    row.reduce(
      (sum, { weight, mean, variance }) => sum + weight * boundedShareBelow(mean, variance, bounds, at),
      0,
    );
  const scale = Math.sqrt(Math.max(...row.map(({ variance }) => variance)));
  const quantile = (probability: number) => {
    let [low, high] = [
      Math.max(bounds.low, row[0]!.mean - scale),
      Math.min(bounds.high, row[0]!.mean + scale),
    ];
    if (bounds.low > -Infinity) low = bounds.low;
    if (bounds.high < Infinity) high = bounds.high;
    for (let k = 0; k < 60 && below(low) > probability; k++) low -= scale * 2 ** k;
    for (let k = 0; k < 60 && below(high) < probability; k++) high = Math.max(high, low) + scale * 2 ** k;
    return findRoot((at) => below(at) - probability, low, high);
  };
  const parts = new MixtureParts();
  for (const { weight, mean, variance } of row) {
    const points = boundedPoints(mean, variance, bounds, { finest: finestOfMoments, effort: 'full' });
    points.at.forEach((at, k) => parts.add(weight * points.weights[k]!, at, 0));
  }
  return {
    median: quantile(0.5),
    interval: [quantile((1 - level) / 2), quantile((1 + level) / 2)],
    standardDeviation: Math.sqrt(parts.finish(mixtureMoments).variance),
  };
}
