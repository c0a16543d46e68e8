/** Coefficients of Cody 1969 for |x| at most 0.5: falling powers, but the highest stands last. */
const nearNumerator = [
  3.1611237438705656, 113.86415415105016, 377.485237685302, 3209.3775891384694, 0.18577770618460315,
] as const;
const nearDenominator = [
  23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171,
] as const;
/** The same for x from 0.5 to 4. */
const middleNumerator = [
  0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001, 881.952221241769,
  1712.0476126340707, 2051.0783778260716, 1230.3393547979972, 2.1531153547440383e-8,
] as const;
const middleDenominator = [
  15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
] as const;
/** The same, in 1 / x², for x above 4. */
const farNumerator = [
  0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275, 6.587491615298378e-4,
  0.016315387137302097,
] as const;
const farDenominator = [
  2.568520192289822, 1.8729528499234673, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
] as const;
const inverseRootPi = 0.5641895835477563;

/** Error function for |x| at most 0.5. */
function nearErrorFunction(x: number): number {
  const square = x * x;
  let numerator = nearNumerator[4] * square;
  let denominator = square;
  for (let i = 0; i < 3; i++) {
    numerator = (numerator + nearNumerator[i]!) * square;
    denominator = (denominator + nearDenominator[i]!) * square;
  }
  return (x * (numerator + nearNumerator[3])) / (denominator + nearDenominator[3]);
}

/** exp(x²) erfc(x) for x from 0.5 to 4. */
function middleScaled(x: number): number {
  let numerator = middleNumerator[8] * x;
  let denominator = x;
  for (let i = 0; i < 7; i++) {
    numerator = (numerator + middleNumerator[i]!) * x;
    denominator = (denominator + middleDenominator[i]!) * x;
  }
  return (numerator + middleNumerator[7]) / (denominator + middleDenominator[7]);
}

/** exp(x²) erfc(x) for x above 4. */
function farScaled(x: number): number {
  const square = 1 / (x * x);
  let numerator = farNumerator[5] * square;
  let denominator = square;
  for (let i = 0; i < 4; i++) {
    numerator = (numerator + farNumerator[i]!) * square;
    denominator = (denominator + farDenominator[i]!) * square;
  }
  const tail = (square * (numerator + farNumerator[4])) / (denominator + farDenominator[4]);
  return (inverseRootPi - tail) / x;
}

/** exp(−x²) with x split at a sixteenth, so that the square's rounding does not reach the exponent. */
function expNegativeSquare(x: number): number {
  const head = Math.trunc(x * 16) / 16;
  return Math.exp(-head * head) * Math.exp(-(x - head) * (x + head));
}

/**
 * exp(x²) erfc(x) for x of 0 or more: the tail without its exponential, so that it never underflows.
 * Rational Chebyshev approximation of Cody (1969), Mathematics of Computation 23: 631–637.
 */
export function scaledErrorComplement(x: number): number {
  if (x <= 0.5) return Math.exp(x * x) * (1 - nearErrorFunction(x));
  return x <= 4 ? middleScaled(x) : farScaled(x);
}

/**
 * Probability that a standard normal value is above z, for z of 0 or more, from exp(−z²/2): who needs the density as well has
 * that already. Good to about 1e-15 of the probability for each unit of z²/2.
 */
export function tailFromBell(z: number, bell: number): number {
  const x = z * Math.SQRT1_2;
  if (x <= 0.5) return 0.5 - 0.5 * nearErrorFunction(x);
  return 0.5 * bell * (x <= 4 ? middleScaled(x) : farScaled(x));
}

/** Complementary error function, to about 1e-15 relative in both tails, 0 above 27 (Cody 1969). */
export function errorComplement(x: number): number {
  const size = Math.abs(x);
  if (size <= 0.5) return 1 - nearErrorFunction(x);
  if (size > 27) return x > 0 ? 0 : 2;
  const upper = expNegativeSquare(size) * scaledErrorComplement(size);
  return x > 0 ? upper : 2 - upper;
}
