import { makeMessages } from '../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { passUp } from '../../analysis/estimate/passes/pass-up.ts';
import { beliefOf } from '../../analysis/estimate/passes/per-rate.ts';
import { findMaximum, logNormalUpperTail } from '../../analysis/statistics/index.ts';
import { observeNineTips } from './nine-tips-tree.ts';
import { knownAtRate } from './one-rate.ts';
import { rootedNineTips } from './rooted-nine-tips.ts';

/*
 * A likelihood that a floor on G is part of (Tobin 1958, Econometrica 26: 24–36, for the idea). The engine keeps a limit of one
 * specimen out of the rate; its passes give this one all the same, with an exact observation on the root for the mean.
 */

/** Log-likelihood of a root's mean and a rate, given the eight tips and that G is a floor or more. */
export function censoredLogLikelihood(rootMean: number, rate: number, floor: number): number {
  const observations = [...observeNineTips(['G'], false), { taxon: 'top', mean: rootMean, variance: 0 }];
  const network = buildNetwork(rootedNineTips, observations);
  const node = network.nodeOf[rootedNineTips.label.indexOf('G')]!;
  const { mean, variance } = beliefOf(knownAtRate(network, 'brownian', rate), { node, upMa: 0 });
  return (
    passUp(network, rate, makeMessages(network.parent.length)) +
    logNormalUpperTail((floor - mean) / Math.sqrt(variance))
  );
}

/** The largest of these, and the mean and the rate where it lies. */
export function censoredBest(floor: number) {
  const atMean = (rootMean: number) =>
    findMaximum((logRate) => censoredLogLikelihood(rootMean, Math.exp(logRate), floor), -8, -3, 1e-10);
  const best = findMaximum((rootMean) => atMean(rootMean).value, 1.5, 3, 1e-9);
  return { mu: best.at, sigma2: Math.exp(atMean(best.at).at), ll: best.value };
}
