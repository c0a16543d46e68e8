import { estimateTrait, slopeOnTree, type Observation } from '../../analysis/estimate/index.ts';
import { compareModels } from '../../analysis/estimate/models/compare-models.ts';
import { makeMessages } from '../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { passUp } from '../../analysis/estimate/passes/pass-up.ts';
import { beliefOf } from '../../analysis/estimate/passes/per-rate.ts';
import { childrenOf, dateAsGiven, isTip, parseNewick } from '../../analysis/tree/index.ts';
import { holdToAccount, type Part } from './account.ts';
import { coefficients } from './brownian-account.ts';
import { sharedPaths, tipNodes } from './dense-brownian.ts';
import { knownAtRate, weightsAtRate } from './one-rate.ts';
import known from './values/primates.json' with { type: 'json' };

const tree = dateAsGiven(parseNewick(known.newick));
const tips = Object.keys(known.X) as (keyof typeof known.X)[];
type Values = Readonly<Record<string, number>>;

const observe = (values: Values): Observation[] =>
  tips.map((taxon) => ({ taxon, mean: values[taxon]!, variance: 0 }));

function estimated(observations: readonly Observation[]) {
  const answer = estimateTrait({ tree, observations, leaveOneOut: true });
  if (!answer.estimated) throw new Error(answer.reason);
  return answer;
}

const [mass, longevity] = [estimated(observe(known.X)), estimated(observe(known.Y))];

/**
 * Contrasts of one trait, nearest forks first: differences of the means that rise to a fork, over the root of their summed
 * variances at a rate of one. The first branch is the one whose tip the file names first.
 */
function contrasts(values: Values): number[] {
  const network = buildNetwork(tree, observe(values));
  const messages = makeMessages(network.parent.length);
  passUp(network, 1, messages);
  return Array.from(tree.parent, (_, node) => node)
    .filter((node) => !isTip(tree, node))
    .map((node) => {
      const [one, other] = childrenOf(tree, node).map((child) => network.nodeOf[child]!) as [number, number];
      const spread = 1 / messages.risingPrecision[one]! + 1 / messages.risingPrecision[other]!;
      return (messages.risingMean[one]! - messages.risingMean[other]!) / Math.sqrt(spread);
    });
}

const [massContrasts, longevityContrasts] = [contrasts(known.X), contrasts(known.Y)];

/** Mean product of the contrasts of two traits: their variances and covariance a unit of time. */
function product(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, contrast, k) => sum + contrast * other[k]!, 0) / one.length;
}

/** Slope of one trait on another by the engine's regression on the tree. */
function slope(of: Values, on: Values): number {
  const found = slopeOnTree({ tree, observations: observe(of), predictor: new Map(Object.entries(on)) });
  if (typeof found === 'string') throw new Error(found);
  return found.median;
}

const varianceMass = product(massContrasts, massContrasts);
const varianceLongevity = product(longevityContrasts, longevityContrasts);
const covariance = product(massContrasts, longevityContrasts);
const correlation = covariance / Math.sqrt(varianceMass * varianceLongevity);

/** The root's value; the rate does not move it. */
function rootOf(values: Values): number {
  return coefficients(buildNetwork(tree, observe(values)), 'brownian', 1).root;
}

/** Each species predicted from the other four, at the rate of largest restricted likelihood of these. */
function leftOut(
  values: Values,
  rows: readonly { readonly tip: string; readonly sigma2_REML: number }[],
): Part {
  return rows.map(({ tip, sigma2_REML: rate }) => {
    const network = buildNetwork(
      tree,
      observe(values).filter(({ taxon }) => taxon !== tip),
    );
    const node = network.nodeOf[tree.label.indexOf(tip)]!;
    const { mean, variance } = beliefOf(knownAtRate(network, 'brownian', rate), { node, upMa: 0 });
    const [weights] = weightsAtRate(network, 'brownian', rate, [node]);
    return {
      tip,
      predicted: mean,
      sd: Math.sqrt(variance),
      df: network.observations.length - 1,
      observed: values[tip]!,
      t: (values[tip]! - mean) / Math.sqrt(variance),
      weights: Object.fromEntries(weights!.map(({ taxon, weight }) => [taxon, weight])),
      rootMean: coefficients(network, 'brownian', rate).root,
    };
  });
}

/** Their rates, each estimated from four species, and the engine's own leaving out. */
function rates(values: Values, rows: readonly { readonly tip: string }[]): Part {
  return rows.map(({ tip }) => {
    const answer = estimated(observe(values).filter(({ taxon }) => taxon !== tip));
    const left = estimated(observe(values)).leaveOneOut.find(({ taxon }) => taxon === tip)!;
    return { tip, sigma2_REML: answer.model.rateReml, predicted: left.median, observed: left.observed };
  });
}

holdToAccount({
  name: 'primates',
  values: known,
  given: ['newick', 'X', 'Y'],
  checks: [
    {
      claim: 'shared paths of the tree',
      within: 1e-14,
      answer: () => ({
        C: sharedPaths(
          tree,
          tips.map((tip) => tipNodes(tree).get(tip)!),
        ),
      }),
    },
    {
      claim: 'contrasts, covariances, regressions and correlation as they are printed',
      at: 'published',
      within: 1e-4,
      answer: () => ({
        contrasts: massContrasts.map((contrast, k) => [contrast, longevityContrasts[k]!]),
        covariance: [
          [varianceMass, covariance],
          [covariance, varianceLongevity],
        ],
        regressionYonX: slope(known.Y, known.X),
        regressionXonY: slope(known.X, known.Y),
        correlation,
      }),
    },
    {
      claim: 'contrasts and roots',
      within: 1e-12,
      answer: () => ({
        contrastsX: massContrasts,
        contrastsY: longevityContrasts,
        rootX: rootOf(known.X),
        rootY: rootOf(known.Y),
        gls_rootX: rootOf(known.X),
        gls_rootY: rootOf(known.Y),
        covREML: covariance,
        corr: correlation,
      }),
    },
    {
      claim: 'rates, likelihoods and the slope of longevity on mass',
      within: 1e-7,
      answer: () => ({
        sigma2REML_X: mass.model.rateReml,
        sigma2REML_Y: longevity.model.rateReml,
        sigma2ML_X: compareModels(buildNetwork(tree, observe(known.X)))[0]!.rate,
        logLik_ML_X: mass.model.logLikelihoodMl,
        logLik_ML_Y: longevity.model.logLikelihoodMl,
        slopeYonX: slope(known.Y, known.X),
      }),
    },
    {
      claim: 'each species predicted from the other four',
      within: 1e-11,
      answer: () => ({ loo_X: leftOut(known.X, known.loo_X), loo_Y: leftOut(known.Y, known.loo_Y) }),
    },
    {
      claim: 'rates without one species, and the engine’s own leaving out',
      within: 1e-7,
      answer: () => ({ loo_X: rates(known.X, known.loo_X), loo_Y: rates(known.Y, known.loo_Y) }),
    },
  ],
});
