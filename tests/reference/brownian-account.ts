import { correctedCriterion, estimateTrait, type ModelName } from '../../analysis/estimate/index.ts';
import { covariancesWith } from '../../analysis/estimate/passes/covariance.ts';
import { buildNetwork, type Network } from '../../analysis/estimate/passes/network.ts';
import { beliefOf } from '../../analysis/estimate/passes/per-rate.ts';
import { makeColumnMessages } from '../../analysis/estimate/passes/messages.ts';
import { passUpTrend, timeNetwork } from '../../analysis/estimate/passes/pass-up-trend.ts';
import { findBestRate } from '../../analysis/estimate/rate/fit.ts';
import { inverseNormal, studentQuantile, studentUpperTail } from '../../analysis/statistics/index.ts';
import type { Check, Part } from './account.ts';
import { nineTipsTree as tree, observeNineTips, standardErrorOf } from './nine-tips-tree.ts';
import { knownAtRate, weightsAtRate } from './one-rate.ts';
import { rootedNineTips } from './rooted-nine-tips.ts';
import nineTips from './values/nine-tips.json' with { type: 'json' };

/** What the checks take from a case of the nine tips: who is missing, and the rates that the rest is worked out at. */
export interface NineTipsCase {
  readonly missing: readonly string[];
  readonly measurementErrorUsed: boolean;
  readonly trend: boolean;
  readonly sigma2_REML: number;
  readonly sigma2_ML: number;
  readonly leaveOneOut: readonly { readonly tip: string; readonly sigma2_REML: number }[];
}

/** Every value of one case, as checks: rates and likelihoods at their best, and all else at the rate that the file gives. */
export function caseChecks(one: NineTipsCase, index: number): Check[] {
  const at = `cases/${index}`;
  const name = `${one.trend ? 'a trend' : 'Brownian motion'} without ${one.missing.join(' and ')}, ${
    one.measurementErrorUsed ? 'with' : 'without'
  } sampling variance`;
  const checks: Check[] = [
    { claim: `${name}: rates of largest likelihood`, at, within: 1e-6, answer: () => bestRates(one) },
    { claim: `${name}: largest likelihoods`, at, within: 1e-11, answer: () => bestLikelihoods(one) },
    { claim: `${name}: means, predictions, weights`, at, within: 1e-9, answer: () => atTheirRates(one) },
    { claim: `${name}: every tip left out`, at, within: 1e-9, answer: () => leftOut(one) },
  ];
  if (!one.measurementErrorUsed)
    checks.push({
      claim: `${name}: the rate integrated is the exact t interval`,
      at,
      within: 1e-7,
      answer: () => integrated(one),
    });
  return checks;
}

/** Covariances, times and ages of the tree itself. */
export function treeOfNineTips(): Part {
  const rows = nineTips.tips.map((tip) => tree.label.indexOf(tip));
  const sinceRoot = (node: number) => nineTips.rootAge - tree.ageMa[node]!;
  const above = (node: number): number[] => (node === -1 ? [] : [node, ...above(tree.parent[node]!)]);
  const byTip = (of: (node: number) => number) =>
    Object.fromEntries(nineTips.tips.map((tip, k) => [tip, of(rows[k]!)]));
  return {
    tipAges: byTip((node) => tree.ageMa[node]!),
    timeSinceRoot: byTip(sinceRoot),
    C: rows.map((row) =>
      rows.map((column) => sinceRoot(above(row).find((node) => above(column).includes(node))!)),
    ),
  };
}

function modelOf({ trend }: NineTipsCase): ModelName {
  return trend ? 'trend' : 'brownian';
}

function networkOf(one: NineTipsCase, alsoMissing: readonly string[] = []): Network {
  return buildNetwork(tree, observeNineTips([...one.missing, ...alsoMissing], one.measurementErrorUsed));
}

function bestRates(one: NineTipsCase): Part {
  const rate = (network: Network, kind: 'restricted' | 'full') =>
    findBestRate(network, modelOf(one), kind)!.rate;
  return {
    sigma2_REML: rate(networkOf(one), 'restricted'),
    sigma2_ML: rate(networkOf(one), 'full'),
    leaveOneOut: one.leaveOneOut.map(({ tip }) => ({
      sigma2_REML: rate(networkOf(one, [tip]), 'restricted'),
    })),
  };
}

function bestLikelihoods(one: NineTipsCase): Part {
  const network = networkOf(one);
  const n = network.observations.length;
  const answer = estimateTrait({ tree, observations: network.observations, model: modelOf(one) });
  if (!answer.estimated) throw new Error(answer.reason);
  const full = answer.model.compared.find(({ name }) => name === modelOf(one))!;
  return {
    n,
    p: n - answer.model.degreesOfFreedom,
    k_ML: full.parameters,
    observed: network.observations.map(({ taxon }) => taxon),
    logLik_ML: answer.model.logLikelihoodMl,
    logLik_REML: answer.model.logLikelihoodReml,
    AICc_ML: correctedCriterion(full.logLikelihood, full.parameters, n),
  };
}

/** Root value and slope with their covariances, at one rate. */
export function coefficients(network: Network, model: ModelName, rate: number) {
  if (model === 'brownian') {
    const root = beliefOf(knownAtRate(network, model, rate), { node: network.parent.length - 1, upMa: 0 });
    return { root: root.mean, slope: null, covariances: [root.variance] };
  }
  const { slope, slopeVariance, centre } = passUpTrend(
    network,
    timeNetwork(network),
    rate,
    makeColumnMessages(network.parent.length),
  );
  const shared = -centre.time * slopeVariance;
  return {
    root: centre.value - slope * centre.time,
    slope,
    covariances: [
      [centre.variance + centre.time ** 2 * slopeVariance, shared],
      [shared, slopeVariance],
    ],
  };
}

function atTheirRates(one: NineTipsCase): Part {
  const [network, model, rate] = [networkOf(one), modelOf(one), one.sigma2_REML];
  const { root, slope, covariances } = coefficients(network, model, rate);
  const atMl = coefficients(network, model, one.sigma2_ML);
  const nodes = one.missing.map((tip) => network.nodeOf[tree.label.indexOf(tip)]!);
  const known = knownAtRate(network, model, rate);
  const joint = nodes.map((node) => {
    const row = new Float64Array(network.parent.length);
    covariancesWith(known, node, row);
    return nodes.map((other) => row[other]!);
  });
  return {
    rootMean: root,
    trendPerMyr: slope,
    coefCov_atREML: covariances,
    coef_atML: atMl.slope === null ? atMl.root : [atMl.root, atMl.slope],
    prediction: one.missing.map((tip) => prediction(one, tip)),
    jointCov: nodes.length === 1 ? joint[0]! : joint,
    jointCorr: nodes.length === 1 ? null : joint[0]![1]! / Math.sqrt(joint[0]![0]! * joint[1]![1]!),
  };
}

function prediction(one: NineTipsCase, tip: string): Part {
  const [network, model, rate] = [networkOf(one), modelOf(one), one.sigma2_REML];
  const node = network.nodeOf[tree.label.indexOf(tip)]!;
  const { mean, variance } = beliefOf(knownAtRate(network, model, rate), { node, upMa: 0 });
  const df = network.observations.length - (one.trend ? 2 : 1);
  const [sd, t975] = [Math.sqrt(variance), studentQuantile(0.975, df)];
  const [weights] = weightsAtRate(network, model, rate, [node]);
  return {
    tip,
    mean,
    sd,
    var: variance,
    varGivenKnownMean: varianceWithRootKnown(one, tip),
    df,
    t975,
    int95_t: around(mean, t975 * sd),
    int95_normal: around(mean, inverseNormal(0.975) * sd),
    sd_newMeasurement: Math.hypot(sd, standardErrorOf(tip)),
    weights: Object.fromEntries(weights!.map(({ taxon, weight }) => [taxon, weight])),
    sumWeights: weights!.reduce((sum, { weight }) => sum + weight, 0),
    priorSdIfNoRelativesButRootMean: Math.sqrt(rate * network.sinceRootMa[node]!),
  };
}

function varianceWithRootKnown(one: NineTipsCase, tip: string): number {
  const observations = observeNineTips(one.missing, one.measurementErrorUsed);
  const network = buildNetwork(rootedNineTips, [...observations, { taxon: 'top', mean: 0, variance: 0 }]);
  const node = network.nodeOf[rootedNineTips.label.indexOf(tip)]!;
  return beliefOf(knownAtRate(network, 'brownian', one.sigma2_REML), { node, upMa: 0 }).variance;
}

function leftOut(one: NineTipsCase): Part {
  const rows = one.leaveOneOut.map(({ tip, sigma2_REML: rate }) => {
    const network = networkOf(one, [tip]);
    const node = network.nodeOf[tree.label.indexOf(tip)]!;
    const { mean, variance } = beliefOf(knownAtRate(network, modelOf(one), rate), { node, upMa: 0 });
    const observed = nineTips.y[tip as keyof typeof nineTips.y];
    const sd = Math.hypot(Math.sqrt(variance), one.measurementErrorUsed ? standardErrorOf(tip) : 0);
    const df = network.observations.length - (one.trend ? 2 : 1);
    const [low, high] = around(mean, studentQuantile(0.975, df) * sd);
    const error = observed - mean;
    return {
      tip,
      rootMean: coefficients(network, modelOf(one), rate).root,
      predicted: mean,
      observed,
      error,
      sd_inclOwnME: sd,
      z: error / sd,
      df,
      p_t_twoSided: 2 * studentUpperTail(Math.abs(error / sd), df),
      int95_t: [low, high],
      inside95: observed >= low && observed <= high,
    };
  });
  return {
    leaveOneOut: rows,
    looRMSE: Math.sqrt(rows.reduce((sum, { error }) => sum + error ** 2, 0) / rows.length),
  };
}

/** The engine's own door: predictions and tips left out, the rate integrated. */
function integrated(one: NineTipsCase): Part {
  const answer = estimateTrait({
    tree,
    observations: observeNineTips(one.missing, false),
    model: modelOf(one),
    leaveOneOut: true,
  });
  if (!answer.estimated) throw new Error(answer.reason);
  return {
    sigma2_REML: answer.model.rateReml,
    sigma2_ML: answer.model.rateMl,
    trendPerMyr: answer.model.slope?.median ?? null,
    prediction: one.missing.map((tip) => {
      const { median, interval, relatives } = answer.nodes[tree.label.indexOf(tip)]!;
      const weights = Object.fromEntries(relatives!.map(({ taxon, weight }) => [taxon, weight]));
      return { tip, mean: median, int95_t: interval, weights };
    }),
    leaveOneOut: answer.leaveOneOut.map(({ taxon, observed, median, interval, miss, inside }) => ({
      tip: taxon,
      observed,
      predicted: median,
      error: miss,
      int95_t: interval,
      inside95: inside,
    })),
  };
}

function around(middle: number, half: number): [number, number] {
  return [middle - half, middle + half];
}
