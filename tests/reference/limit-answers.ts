import {
  BoundedValue,
  boundedPoints,
  finestOfMoments,
  type Bounds,
} from '../../analysis/estimate/limits/bounded-end.ts';
import { readGivenOneLimit } from '../../analysis/estimate/limits/condition-on-one.ts';
import { readLimitProbabilities } from '../../analysis/estimate/limits/limit-probability.ts';
import { mixtureMoments, mixtureQuantile } from '../../analysis/estimate/mixture.ts';
import { covariancesWith } from '../../analysis/estimate/passes/covariance.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { beliefOf, readAtRates } from '../../analysis/estimate/passes/per-rate.ts';
import { findFit, type Fit } from '../../analysis/estimate/rate/fit.ts';
import {
  logGamma,
  normalHazard,
  normalUpperTail,
  studentQuantile,
  studentUpperTail,
} from '../../analysis/statistics/index.ts';
import type { Part } from './account.ts';
import { nineTipsNode, nineTipsTree as tree, observeNineTips } from './nine-tips-tree.ts';
import { fitAtRate, knownAtRate, mixtureOf } from './one-rate.ts';
import nineTips from './values/nine-tips.json' with { type: 'json' };
import limits from './values/limits.json' with { type: 'json' };

/* What the engine says of a limit on G, in the shape of the file of reference values. */

type Floor = (typeof limits.lowerBound)[number];

/** G is missing: a fit at the rate of largest restricted likelihood, and G's place in it. */
export function withoutG(withError: boolean) {
  const network = buildNetwork(tree, observeNineTips(['G'], withError));
  const rate = nineTips.cases.find(
    ({ missing, measurementErrorUsed }) => missing.length === 1 && measurementErrorUsed === withError,
  )!.sigma2_REML;
  return { fit: fitAtRate(network, 'brownian', rate), node: network.nodeOf[nineTipsNode('G')]! };
}

const specimen = (ends: { atLeast?: number; atMost?: number }) => ({
  taxon: 'G',
  specimen: 'g',
  twigVariance: 0,
  ...ends,
});

type Limit = ReturnType<typeof specimen>;

function givenLimit(fit: Fit, limit: Limit, at: number, nodes: readonly number[], level: number) {
  return readAtRates(fit, readGivenOneLimit(fit, { limit, at }, nodes, level));
}

function probabilityOf(fit: Fit, limit: Limit, at: number): number {
  return readAtRates(fit, readLimitProbabilities([{ limit, at }]))[0]!.probability;
}

/** Mean, variance and quantiles of G's value once a limit on it is known. */
export function limited(fit: Fit, node: number, ends: { atLeast?: number; atMost?: number }, level = 0.95) {
  const { mean, variance } = mixtureMoments(mixtureOf(fit, node));
  const value = givenLimit(fit, specimen(ends), node, [node], level)[0]!;
  const bounds = { low: ends.atLeast ?? -Infinity, high: ends.atMost ?? Infinity };
  return {
    mean: meanWithin(mean, variance, bounds),
    variance: value.standardDeviation ** 2,
    low: value.interval[0],
    median: value.median,
    high: value.interval[1],
  };
}

function meanWithin(mean: number, variance: number, bounds: Bounds): number {
  const { at, weights } = boundedPoints(mean, variance, bounds, { finest: finestOfMoments, effort: 'full' });
  return at.reduce((sum, value, k) => sum + value * weights[k]!, 0);
}

/** One floor at the best rate: the normal distribution cut off, by quadrature and by the formulas for its moments. */
export function cutNormal({ measurementError, L }: Floor): Part {
  const { fit, node } = withoutG(measurementError);
  const { mean, variance } = mixtureMoments(mixtureOf(fit, node));
  const deviation = Math.sqrt(variance);
  const alpha = (L - mean) / deviation;
  const hazard = normalHazard(alpha);
  const value = limited(fit, node, { atLeast: L });
  return {
    untruncatedMean: mean,
    untruncatedSd: deviation,
    alpha,
    probSatisfied_normal: probabilityOf(fit, specimen({ atLeast: L }), node),
    normal: {
      mean: value.mean,
      meanByFormula: mean + deviation * hazard,
      varByFormula: variance * (1 + alpha * hazard - hazard ** 2),
      q025: value.low,
      median: value.median,
      q975: value.high,
      lowerBoundOneSided95: [L, limited(fit, node, { atLeast: L }, 0.9).high],
    },
  };
}

/** Variance by quadrature, beside the formula's. */
export function cutVariance({ measurementError, L }: Floor) {
  const { fit, node } = withoutG(measurementError);
  return limited(fit, node, { atLeast: L }).variance;
}

/** One floor on Student's distribution about the mean of G: its share, mean and quantiles by the engine's distribution. */
export function cutStudent({ measurementError, L }: Floor): Part {
  const { fit, node } = withoutG(measurementError);
  const { mean, variance } = mixtureMoments(mixtureOf(fit, node));
  const deviation = Math.sqrt(variance);
  const df = fit.network.observations.length - 1;
  const alpha = (L - mean) / deviation;
  const share = studentUpperTail(alpha, df);
  // Johnson, Kotz and Balakrishnan 1995, Continuous Univariate Distributions, chapter 28
  const density =
    Math.exp(logGamma((df + 1) / 2) - logGamma(df / 2)) /
    Math.sqrt(df * Math.PI) /
    (1 + alpha ** 2 / df) ** ((df + 1) / 2);
  const above = (probability: number) => mean - deviation * studentQuantile((1 - probability) * share, df);
  const middle = mean + (((deviation * (df + alpha ** 2)) / (df - 1)) * density) / share;
  return {
    t: {
      df,
      probSatisfied: share,
      mean: middle,
      meanNumeric: middle,
      q025: above(0.025),
      median: above(0.5),
      q975: above(0.975),
    },
  };
}

/** The same where the engine integrates the rate, which without sampling variance is Student's distribution. */
export function cutIntegrated({ L }: Floor): Part {
  const fit = findFit(buildNetwork(tree, observeNineTips(['G'], false)), 'brownian')!;
  const node = fit.network.nodeOf[nineTipsNode('G')]!;
  const probability = probabilityOf(fit, specimen({ atLeast: L }), node);
  const mixture = mixtureOf(fit, node);
  const { weights, means, deviations } = mixture;
  const above = (share: number) => mixtureQuantile(mixture, 1 - (1 - share) * probability);
  let [mass, moment] = [0, 0];
  weights.forEach((weight, k) => {
    const share = weight * normalUpperTail((L - means[k]!) / deviations[k]!);
    mass += share;
    moment += share * meanWithin(means[k]!, deviations[k]! ** 2, { low: L, high: Infinity });
  });
  return {
    t: {
      probSatisfied: probability,
      mean: moment / mass,
      q025: above(0.025),
      median: above(0.5),
      q975: above(0.975),
    },
  };
}

/** A floor on G moves C, whose value is missing too. */
export function joint(): Part {
  const network = buildNetwork(tree, observeNineTips(limits.joint.missing, false));
  const rate = limits.joint.s2;
  const [g, c] = ['G', 'C'].map((tip) => network.nodeOf[nineTipsNode(tip)]!) as [number, number];
  const known = knownAtRate(network, 'brownian', rate);
  const rows = [g, c].map((node) => {
    const row = new Float64Array(network.parent.length);
    covariancesWith(known, node, row);
    return [row[g]!, row[c]!];
  });
  const [meanG, meanC] = [g, c].map((node) => beliefOf(known, { node, upMa: 0 }).mean) as [number, number];
  const [varianceG, shared] = rows[0] as [number, number];
  const fit = fitAtRate(network, 'brownian', rate);
  const limit = specimen({ atLeast: limits.joint.bound_G });
  const [boundG, boundC] = givenLimit(fit, limit, g, [g, c], 0.95);
  const newG = meanWithin(meanG, varianceG, { low: limits.joint.bound_G, high: Infinity });
  const newMeans = [newG, meanC + (shared / varianceG) * (newG - meanG)];
  const newVariances = [boundG, boundC].map((value) => value!.standardDeviation ** 2);
  return {
    observed: network.observations.map(({ taxon }) => taxon),
    mu: [meanG, meanC],
    Sigma: rows,
    mean_package: newMeans,
    mean_exact: newMeans,
    var_package: newVariances,
    var_C_exact: newVariances[1]!,
    cov: (shared / varianceG) * newVariances[0]!,
  };
}

export function standard({ a }: { readonly a: number }): Part {
  const bounds = { low: a, high: Infinity };
  const { at, weights } = boundedPoints(0, 1, bounds, { finest: finestOfMoments, effort: 'full' });
  const mean = at.reduce((sum, value, k) => sum + value * weights[k]!, 0);
  return {
    a,
    mean,
    var: at.reduce((sum, value, k) => sum + (value - mean) ** 2 * weights[k]!, 0),
    q025: new BoundedValue().set(0, 1, bounds).placeAt(0.975),
    q975: new BoundedValue().set(0, 1, bounds).placeAt(0.025),
  };
}
