import { findRoot } from './root.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { inverseNormal } from './inverse-normal.ts';
import { normalUpperTail } from './normal.ts';

/** Degrees of freedom above which Student's distribution is the normal one to every digit printed. */
const normalDegrees = 1e9;

/**
 * Probability that a value of Student's distribution exceeds t, with the digits of the tail kept: half of I_x(n / 2, 1 / 2)
 * at x = n / (n + t²) for n degrees of freedom, and what is left of 1 below t = 0.
 */
export function studentUpperTail(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom > normalDegrees) return normalUpperTail(t);
  const tail = 0.5 * incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5);
  return t >= 0 ? tail : 1 - tail;
}

/** Probability that a value of Student's distribution is t or less. */
export function studentProbability(t: number, degreesOfFreedom: number): number {
  return studentUpperTail(-t, degreesOfFreedom);
}

/**
 * t below which a value of Student's distribution lies with the given probability, by root finding on its tail.
 * Throws for degrees of freedom of 0 or less or a probability outside 0 to 1.
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) throw new Error(`degrees of freedom must be above 0, got ${degreesOfFreedom}`);
  if (!(probability > 0 && probability < 1))
    throw new Error(`probability must lie inside 0 to 1, got ${probability}`);
  if (probability === 0.5) return 0;
  if (probability < 0.5) return -studentQuantile(1 - probability, degreesOfFreedom);
  if (degreesOfFreedom > normalDegrees) return inverseNormal(probability);
  const tail = 1 - probability;
  const low = inverseNormal(probability);
  let high = 2 * low + 1;
  while (studentUpperTail(high, degreesOfFreedom) > tail) high *= 2;
  return findRoot((t) => Math.log(studentUpperTail(t, degreesOfFreedom) / tail), low, high);
}
