import type { ModelName } from '../../analysis/estimate/index.ts';
import type { Network } from '../../analysis/estimate/passes/network.ts';
import { forEachRate, type AtRate } from '../../analysis/estimate/passes/per-rate.ts';
import type { Fit } from '../../analysis/estimate/rate/fit.ts';

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
  forEachRate(fitAtRate(network, model, rate), (state) => (known = state));
  return known!;
}
