import { findRoot } from './root.ts';
import { logGamma } from './gamma.ts';

/**
 * Regularised upper incomplete gamma function Q(a, x): the series below a + 1, the continued fraction above
 * (NIST Digital Library of Mathematical Functions 8.7.1 and 8.9.2). 1 at x of 0 or less.
 */
function upperGamma(a: number, x: number): number {
  if (!(x > 0)) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? 1 - front * gammaSeries(a, x) : front * gammaFraction(a, x);
}

function gammaSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < 10_000 && Math.abs(term) > 1e-17 * sum; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

function gammaFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let result = d;
  for (let k = 1; k < 10_000; k++) {
    const step = -k * (k - a);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    result *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return result;
}

/**
 * Probability that a chi-squared value exceeds x: Q(degrees / 2, x / 2), with the digits of a far tail kept; 1 at x of 0 or
 * less.
 */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  return upperGamma(degreesOfFreedom / 2, x / 2);
}

/**
 * Value below which a chi-squared value lies with the given probability, by root finding on the distribution function.
 * Throws for a probability that is not inside 0 to 1.
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1))
    throw new Error(`probability must lie inside 0 to 1, got ${probability}`);
  let high = degreesOfFreedom + 1;
  while (chiSquareUpperTail(high, degreesOfFreedom) > 1 - probability) high *= 2;
  return findRoot((x) => 1 - chiSquareUpperTail(x, degreesOfFreedom) - probability, 0, high);
}
