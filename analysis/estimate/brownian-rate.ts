import type { DatedTree } from '../tree/index.ts';
import type { Observation } from './observation.ts';
import { buildNetwork } from './passes/network.ts';
import { findBestRate } from './rate/fit.ts';

/**
 * Rate of Brownian motion of largest restricted likelihood, squared units of the scale a million years, the sampling
 * variance counted for itself; 0 where that is all there is, undefined where exact values are all equal.
 */
export function findBrownianRate(tree: DatedTree, observations: readonly Observation[]): number | undefined {
  return findBestRate(buildNetwork(tree, observations), 'brownian', 'restricted')?.rate;
}
