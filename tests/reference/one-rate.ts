import type { ModelName } from '../../analysis/estimate/index.ts';
import type { Network } from '../../analysis/estimate/passes/network.ts';
import { readMixture } from '../../analysis/estimate/posterior.ts';
import type { Mixture } from '../../analysis/estimate/mixture.ts';
import { readAtRates, type AtRate } from '../../analysis/estimate/passes/per-rate.ts';
import type { Fit } from '../../analysis/estimate/rate/fit.ts';
import { readRelativeWeights, type RelativeWeight } from '../../analysis/estimate/relative-weights.ts';

/** A fit with all its weight on one rate, for answers that hold at a rate that is given. */
export function fitAtRate(network: Network, model: ModelName, rate: number): Fit {
  const grid = {
    rates: Float64Array.of(rate),
    weights: Float64Array.of(1),
    centre: Math.log(rate),
    width: 1,
    firstStep: 0,
    step: 1,
  };
  return { model, network, grid, effort: 'full' };
}

/** What all observations say at one rate. */
export function knownAtRate(network: Network, model: ModelName, rate: number): AtRate {
  let known: AtRate | undefined;
  return readAtRates(fitAtRate(network, model, rate), {
    atRate: (state) => (known = state),
    result: () => known!,
  });
}

/** Weights of relatives in the values of some nodes, at one rate. */
export function weightsAtRate(
  network: Network,
  model: ModelName,
  rate: number,
  nodes: readonly number[],
): RelativeWeight[][] {
  const fit = fitAtRate(network, model, rate);
  return readAtRates(fit, readRelativeWeights(fit, nodes));
}

/** What a node's value may be by a fit. */
export function mixtureOf(fit: Fit, node: number): Mixture {
  return readAtRates(fit, readMixture(fit, { node, upMa: 0 }));
}
