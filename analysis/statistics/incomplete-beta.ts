import { logGamma } from './gamma.ts';

const smallest = 1e-300;

/** Continued fraction of the incomplete beta function by the modified method of Lentz. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / guard(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guard(1 + even * d);
    c = guard(1 + even / c);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guard(1 + odd * d);
    c = guard(1 + odd / c);
    const step = d * c;
    result *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return result;
}

function guard(value: number): number {
  return Math.abs(value) < smallest ? smallest : value;
}

/**
 * Regularised incomplete beta function I_x(a, b) for a and b above 0; 0 below and 1 above the unit interval.
 * Continued fraction 8.17.22 of the NIST Digital Library of Mathematical Functions.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const logFront = logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x);
  if (x < (a + 1) / (a + b + 2)) return (Math.exp(logFront) * betaFraction(x, a, b)) / a;
  return 1 - (Math.exp(logFront) * betaFraction(1 - x, b, a)) / b;
}
