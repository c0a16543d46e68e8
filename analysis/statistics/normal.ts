import { errorComplement, scaledErrorComplement } from './error-function.ts';

const rootHalf = Math.SQRT1_2;
const inverseRootTwoPi = 0.3989422804014327;

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return inverseRootTwoPi * Math.exp(-0.5 * z * z);
}

/** Probability that a standard normal value is z or less. */
export function normalProbability(z: number): number {
  return 0.5 * errorComplement(-z * rootHalf);
}

/**
 * Probability that a standard normal value is above z, half of erfc(z / √2): keeps its digits far in the tail and is 0
 * beyond z = 38.2, where only the log is left.
 */
export function normalUpperTail(z: number): number {
  return 0.5 * errorComplement(z * rootHalf);
}

/** Natural log of the probability above z; finite where the probability itself is too small for a double. */
export function logNormalUpperTail(z: number): number {
  if (z < 1) return Math.log1p(-normalProbability(z));
  return Math.log(0.5 * scaledErrorComplement(z * rootHalf)) - 0.5 * z * z;
}

/**
 * Density over upper tail at z, one over Mills' ratio: the mean of a standard normal value known to exceed z. For z of
 * 0 or more the exponentials of density and tail cancel before either is taken, so that it stays finite.
 */
export function normalHazard(z: number): number {
  if (z < 0) return normalDensity(z) / normalUpperTail(z);
  return (2 * inverseRootTwoPi) / scaledErrorComplement(z * rootHalf);
}
