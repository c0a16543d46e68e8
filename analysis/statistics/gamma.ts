const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406,
  12.507343278686905, -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
] as const;
const halfLogTwoPi = 0.9189385332046727;

/**
 * Natural log of the gamma function for x above 0, Infinity at 0: the series of Lanczos 1964 (SIAM Journal on Numerical
 * Analysis B 1: 86–96) with g = 7 and nine terms, and the reflection formula below a half.
 */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const shifted = x - 1;
  let sum: number = lanczos[0];
  for (let i = 1; i < 9; i++) sum += lanczos[i]! / (shifted + i);
  const base = shifted + 7.5;
  return halfLogTwoPi + (shifted + 0.5) * Math.log(base) - base + Math.log(sum);
}
