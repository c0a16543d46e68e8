import { inverseNormal, scaledErrorComplement } from '../statistics/index.ts';

const inverseRootTwoPi = 0.3989422804014327;

/** Miss in probability from which one more of Newton's steps is good to 1e-9 of the deviation at any printed level. */
const closeMiss = 1e-6;

/** Standard deviations beyond which a normal distribution's tail is less than the last digit of 1. */
const farDeviations = 8.3;

/** A mixture of normal distributions; the weights add up to 1. */
export interface Mixture {
  readonly weights: Float64Array;
  readonly means: Float64Array;
  readonly variances: Float64Array;
}

/** A mixture that is put together part by part, in room that doubles. */
export class MixtureParts {
  #count = 0;
  #weights = new Float64Array(64);
  #means = new Float64Array(64);
  #variances = new Float64Array(64);

  /** Adds a normal distribution; one of variance 0 is a point. */
  add(weight: number, mean: number, variance: number): void {
    if (this.#count === this.#weights.length) this.#grow();
    this.#weights[this.#count] = weight;
    this.#means[this.#count] = mean;
    this.#variances[this.#count] = variance;
    this.#count++;
  }

  /** The mixture so far, its weights scaled to add up to 1. */
  mixture(): Mixture {
    let total = 0;
    for (let k = 0; k < this.#count; k++) total += this.#weights[k]!;
    const weights = this.#weights.slice(0, this.#count);
    for (let k = 0; k < weights.length; k++) weights[k]! /= total;
    return {
      weights,
      means: this.#means.slice(0, this.#count),
      variances: this.#variances.slice(0, this.#count),
    };
  }

  #grow(): void {
    const doubled = (old: Float64Array) => {
      const room = new Float64Array(2 * old.length);
      room.set(old);
      return room;
    };
    this.#weights = doubled(this.#weights);
    this.#means = doubled(this.#means);
    this.#variances = doubled(this.#variances);
  }
}

/**
 * Mean, variance, skewness and excess kurtosis of a mixture, exactly, from the moments of its normal parts. The last two
 * are 0 where the variance is.
 */
export function mixtureMoments({ weights, means, variances }: Mixture) {
  let mean = 0;
  for (let k = 0; k < weights.length; k++) mean += weights[k]! * means[k]!;
  let [variance, third, fourth] = [0, 0, 0];
  for (let k = 0; k < weights.length; k++) {
    const off = means[k]! - mean;
    const [square, own] = [off * off, variances[k]!];
    variance += weights[k]! * (own + square);
    third += weights[k]! * off * (3 * own + square);
    fourth += weights[k]! * (3 * own * own + 6 * own * square + square * square);
  }
  if (!(variance > 0)) return { mean, variance: 0, skew: 0, excess: 0 };
  return { mean, variance, skew: third / variance ** 1.5, excess: fourth / (variance * variance) - 3 };
}

/** Standard deviation of each part: several quantiles of one mixture need them many times. */
export function mixtureDeviations({ variances }: Mixture): Float64Array {
  const deviations = new Float64Array(variances.length);
  for (let k = 0; k < deviations.length; k++) deviations[k] = Math.sqrt(variances[k]!);
  return deviations;
}

/**
 * Value below which a mixture has the given probability: Newton's steps on the distribution function, kept inside a
 * bracket, from a start by the first terms of Cornish and Fisher 1938 (Revue de l'Institut International de
 * Statistique 5: 307–320). Where every variance is 0 it is the mean.
 */
export function mixtureQuantile(
  mixture: Mixture,
  probability: number,
  moments = mixtureMoments(mixture),
  deviations = mixtureDeviations(mixture),
): number {
  const deviation = Math.sqrt(moments.variance);
  if (deviation === 0) return moments.mean;
  const z = inverseNormal(probability);
  const bent = z + (moments.skew * (z * z - 1)) / 6 + (moments.excess * z * (z * z - 3)) / 24;
  let at = moments.mean + deviation * (Math.abs(bent - z) < 0.5 ? bent : z);
  let [low, high] = [-Infinity, Infinity];
  for (let k = 0; k < 100; k++) {
    const { reached, density } = distributionAt(mixture, deviations, at);
    const miss = reached - probability;
    if (miss > 0) high = at;
    else low = at;
    if (Math.abs(miss) < closeMiss && density > 0) return at - miss / density;
    let next = at - miss / density;
    if (!(next > low && next < high)) next = insideBracket(low, high, at, deviation);
    const settled = Math.abs(next - at) <= 1e-15 * Math.abs(at);
    at = next;
    if (settled) break;
  }
  return at;
}

/** Probability below a value, and density there. A part without variance counts half at its own place. */
function distributionAt({ weights, means }: Mixture, deviations: Float64Array, at: number) {
  // a binding of its own keeps the call free of look-ups where modules are not bundled
  const scaledTail = scaledErrorComplement;
  let [reached, density] = [0, 0];
  for (let i = 0; i < weights.length; i++) {
    const deviation = deviations[i]!;
    if (deviation === 0) {
      reached += weights[i]! * (at > means[i]! ? 1 : at === means[i]! ? 0.5 : 0);
      continue;
    }
    const z = (at - means[i]!) / deviation;
    if (z > farDeviations) reached += weights[i]!;
    if (Math.abs(z) > farDeviations) continue;
    const bell = Math.exp(-0.5 * z * z);
    const tail = 0.5 * bell * scaledTail(Math.abs(z) * Math.SQRT1_2);
    reached += weights[i]! * (z > 0 ? 1 - tail : tail);
    density += (weights[i]! * inverseRootTwoPi * bell) / deviation;
  }
  return { reached, density };
}

function insideBracket(low: number, high: number, at: number, deviation: number): number {
  if (low === -Infinity) return at - deviation;
  if (high === Infinity) return at + deviation;
  return (low + high) / 2;
}
