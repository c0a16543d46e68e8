import { inverseNormal, tailFromBell } from '../statistics/index.ts';

const inverseRootTwoPi = 0.3989422804014327;

/** Miss, as a share of the smaller tail, from which one more step is good to 1e-9 of the deviation. */
const closeMiss = 1e-3;

/** Standard deviations beyond which a normal distribution's tail is less than the last digit of 1. */
const farDeviations = 8.3;

/** A mixture of normal distributions; the weights add up to 1. */
export interface Mixture {
  readonly weights: Float64Array;
  readonly means: Float64Array;
  /** Standard deviation of each part; a part of 0 is a point. */
  readonly deviations: Float64Array;
}

/** Parts that a mixture has room for at first: few need more. */
const firstRoom = 256;

/** Room of mixtures that are finished, for the next ones: making it costs more than filling it. */
const spareRooms: Float64Array[] = [];

/** A mixture that is put together part by part, in room that doubles. */
export class MixtureParts {
  #count = 0;
  /** Weights, then means, then deviations. */
  #parts = spareRooms.pop() ?? new Float64Array(3 * firstRoom);
  #room = this.#parts.length / 3;

  /** Adds a normal distribution; one of variance 0 is a point. */
  add(weight: number, mean: number, variance: number): void {
    if (this.#count === this.#room) this.#grow();
    this.#parts[this.#count] = weight;
    this.#parts[this.#room + this.#count] = mean;
    this.#parts[2 * this.#room + this.#count] = Math.sqrt(variance);
    this.#count++;
  }

  /** What a use makes of the mixture, which is not to be kept: its room goes to another. */
  finish<T>(use: (mixture: Mixture) => T): T {
    const made = use(this.#mixture());
    spareRooms.push(this.#parts);
    return made;
  }

  /** The mixture, its weights scaled to add up to 1. */
  #mixture(): Mixture {
    const [weights, means, deviations] = [0, 1, 2].map((column) =>
      this.#parts.subarray(column * this.#room, column * this.#room + this.#count),
    );
    let total = 0;
    for (let k = 0; k < weights!.length; k++) total += weights![k]!;
    for (let k = 0; k < weights!.length; k++) weights![k]! /= total;
    return { weights: weights!, means: means!, deviations: deviations! };
  }

  #grow(): void {
    const doubled = new Float64Array(6 * this.#room);
    for (let column = 0; column < 3; column++)
      doubled.set(
        this.#parts.subarray(column * this.#room, (column + 1) * this.#room),
        2 * column * this.#room,
      );
    this.#parts = doubled;
    this.#room *= 2;
  }
}

/**
 * Mean, variance, skewness and excess kurtosis of a mixture, exactly, from the moments of its normal parts. The last two
 * are 0 where the variance is.
 */
export function mixtureMoments({ weights, means, deviations }: Mixture) {
  let mean = 0;
  for (let k = 0; k < weights.length; k++) mean += weights[k]! * means[k]!;
  let variance = 0;
  let third = 0;
  let fourth = 0;
  for (let k = 0; k < weights.length; k++) {
    const off = means[k]! - mean;
    const square = off * off;
    const own = deviations[k]! * deviations[k]!;
    variance += weights[k]! * (own + square);
    third += weights[k]! * off * (3 * own + square);
    fourth += weights[k]! * (3 * own * own + 6 * own * square + square * square);
  }
  if (!(variance > 0)) return { mean, variance: 0, skew: 0, excess: 0 };
  return { mean, variance, skew: third / variance ** 1.5, excess: fourth / (variance * variance) - 3 };
}

/**
 * Value below which a mixture has the given probability: Halley's steps on the distribution function, kept inside a
 * bracket, from a start by the first terms of Cornish and Fisher 1938 (Revue de l'Institut International de
 * Statistique 5: 307–320). Where nothing varies it is the mean.
 */
export function mixtureQuantile(
  mixture: Mixture,
  probability: number,
  moments = mixtureMoments(mixture),
): number {
  const deviation = Math.sqrt(moments.variance);
  if (deviation === 0) return moments.mean;
  const z = inverseNormal(probability);
  const bent = z + (moments.skew * (z * z - 1)) / 6 + (moments.excess * z * (z * z - 3)) / 24;
  let at = moments.mean + deviation * (Math.abs(bent - z) < 0.5 ? bent : z);
  const close = closeMiss * Math.min(probability, 1 - probability);
  let low = -Infinity;
  let high = Infinity;
  for (let k = 0; k < 100; k++) {
    const { reached, density, slope } = distributionAt(mixture, at);
    const miss = reached - probability;
    if (miss > 0) high = at;
    else low = at;
    // the bend makes a step of third order of Newton's second; far off it is not trusted
    const bend = Math.min(0.5, (0.5 * miss * slope) / (density * density));
    let next = at - miss / density / (1 - bend);
    if (Math.abs(miss) < close && density > 0) return next;
    if (!(next > low && next < high)) next = insideBracket(low, high, at, deviation);
    const settled = Math.abs(next - at) <= 1e-15 * Math.abs(at);
    at = next;
    if (settled) break;
  }
  return at;
}

/** Probability below a value, density there and its slope. A part without variance counts half at its own place. */
function distributionAt({ weights, means, deviations }: Mixture, at: number) {
  // a binding of its own keeps the call free of look-ups where modules are not bundled
  const tailOf = tailFromBell;
  let reached = 0;
  let density = 0;
  let slope = 0;
  for (let i = 0; i < weights.length; i++) {
    const weight = weights[i]!;
    const off = at - means[i]!;
    const perDeviation = 1 / deviations[i]!;
    if (perDeviation === Infinity) {
      reached += weight * (off > 0 ? 1 : off === 0 ? 0.5 : 0);
      continue;
    }
    const z = off * perDeviation;
    const far = Math.abs(z);
    if (far > farDeviations) {
      if (z > 0) reached += weight;
      continue;
    }
    const bell = Math.exp(-0.5 * z * z);
    const tail = tailOf(far, bell);
    reached += weight * (z > 0 ? 1 - tail : tail);
    const own = weight * bell * perDeviation;
    density += own;
    slope -= own * z * perDeviation;
  }
  return { reached, density: inverseRootTwoPi * density, slope: inverseRootTwoPi * slope };
}

function insideBracket(low: number, high: number, at: number, deviation: number): number {
  if (low === -Infinity) return at - deviation;
  if (high === Infinity) return at + deviation;
  return (low + high) / 2;
}
