/** Coefficients of AS 241, highest power first, for a probability within 0.425 of a half. */
const centre = {
  top: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
    1971.5909503065513, 133.14166789178438, 3.3871328727963665,
  ],
  bottom: [
    5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
    687.1870074920579, 42.31333070160091, 1,
  ],
} as const;
/** The same where the square root of −ln of the smaller tail is at most 5. */
const shoulder = {
  top: [
    7.745450142783414e-4, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
    5.769497221460691, 4.630337846156546, 1.4234371107496835,
  ],
  bottom: [
    1.0507500716444169e-9, 5.475938084995345e-4, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
    1.6763848301838038, 2.053191626637759, 1,
  ],
} as const;
/** The same for smaller tails, below exp(−25). */
const tail = {
  top: [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
    0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  bottom: [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 7.868691311456133e-4,
    0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
  ],
} as const;

interface Ratio {
  readonly top: readonly number[];
  readonly bottom: readonly number[];
}

function evaluate({ top, bottom }: Ratio, x: number): number {
  let numerator = 0;
  let denominator = 0;
  for (let i = 0; i < 8; i++) {
    numerator = numerator * x + top[i]!;
    denominator = denominator * x + bottom[i]!;
  }
  return numerator / denominator;
}

/** z above which a standard normal value lies with a probability whose natural log is given, at most ln ½. */
function upperQuantileFromLog(logProbability: number): number {
  const root = Math.sqrt(-logProbability);
  return root <= 5 ? evaluate(shoulder, root - 1.6) : evaluate(tail, root - 5);
}

/**
 * z below which a standard normal value lies with the given probability; ∓Infinity at 0 and 1, NaN outside.
 * Algorithm AS 241, PPND16 (Wichura 1988, Applied Statistics 37: 477–484).
 */
export function inverseNormal(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) return NaN;
  if (probability === 0) return -Infinity;
  if (probability === 1) return Infinity;
  const off = probability - 0.5;
  if (Math.abs(off) <= 0.425) return off * evaluate(centre, 0.180625 - off * off);
  return off < 0
    ? -upperQuantileFromLog(Math.log(probability))
    : upperQuantileFromLog(Math.log(1 - probability));
}
