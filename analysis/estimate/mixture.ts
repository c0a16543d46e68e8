import { scaledErrorComplement } from '../statistics/index.ts';

const inverseRootTwoPi = 0.3989422804014327;

/** Mean and variance of a mixture of normal distributions. */
export function mixtureMoments(weights: Float64Array, means: Float64Array, variances: Float64Array) {
  let mean = 0;
  for (let k = 0; k < weights.length; k++) mean += weights[k]! * means[k]!;
  let variance = 0;
  for (let k = 0; k < weights.length; k++)
    variance += weights[k]! * (variances[k]! + (means[k]! - mean) * (means[k]! - mean));
  return { mean, variance };
}

/**
 * Value below which a mixture of normal distributions has the given probability: Newton's steps on the distribution
 * function, kept inside a bracket. The weights add up to 1; where every variance is 0 it is the mean.
 */
export function mixtureQuantile(
  weights: Float64Array,
  means: Float64Array,
  variances: Float64Array,
  probability: number,
  start: number,
): number {
  let [low, high] = [-Infinity, Infinity];
  let at = start;
  for (let k = 0; k < 100; k++) {
    let reached = 0;
    let density = 0;
    for (let i = 0; i < weights.length; i++) {
      const deviation = Math.sqrt(variances[i]!);
      const z = (at - means[i]!) / deviation;
      const bell = Math.exp(-0.5 * z * z);
      const tail = 0.5 * bell * scaledErrorComplement(Math.abs(z) * Math.SQRT1_2);
      reached += weights[i]! * (z > 0 ? 1 - tail : tail);
      density += (weights[i]! * inverseRootTwoPi * bell) / deviation;
    }
    const miss = reached - probability;
    if (miss > 0) high = at;
    else low = at;
    let next = at - miss / density;
    if (!(next > low && next < high)) next = insideBracket(low, high, at, density);
    const moved = Math.abs(next - at);
    at = next;
    if (moved * density < 1e-13) break;
  }
  return at;
}

function insideBracket(low: number, high: number, at: number, density: number): number {
  if (low === -Infinity) return at - 1 / Math.max(density, 1e-300);
  if (high === Infinity) return at + 1 / Math.max(density, 1e-300);
  return (low + high) / 2;
}
