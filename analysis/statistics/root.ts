import { rootTolerance } from '../tolerance.ts';

/**
 * Where a function crosses zero between two ends of unlike sign: inverse quadratic steps guarded by bisection
 * (Brent 1973, Algorithms for Minimization without Derivatives, chapter 4). Throws when the signs are alike.
 */
export function findRoot(of: (x: number) => number, low: number, high: number, tolerance = 0): number {
  let a = low;
  let b = high;
  let atA = of(a);
  let atB = of(b);
  if (atA === 0) return a;
  if (atB === 0) return b;
  if (atA > 0 === atB > 0) throw new Error(`no change of sign between ${low} and ${high}`);
  let c = a;
  let atC = atA;
  let step = b - a;
  let last = step;
  for (let k = 0; k < 200; k++) {
    if (Math.abs(atC) < Math.abs(atB)) {
      [a, b, c] = [b, c, b];
      [atA, atB, atC] = [atB, atC, atB];
    }
    const near = 2 * rootTolerance * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= near || atB === 0) return b;
    const guess =
      Math.abs(last) >= near && Math.abs(atA) > Math.abs(atB) ? interpolate(a, b, c, atA, atB, atC) : NaN;
    if (Math.abs(guess) < Math.min(0.75 * Math.abs(c - b), Math.abs(last / 2)) && guess > 0 === half > 0) {
      last = step;
      step = guess;
    } else {
      step = half;
      last = half;
    }
    a = b;
    atA = atB;
    b += Math.abs(step) > near ? step : Math.sign(half) * near;
    atB = of(b);
    if (atB > 0 === atC > 0) {
      c = a;
      atC = atA;
      step = b - a;
      last = step;
    }
  }
  return b;
}

/** Step from b to the zero of the curve through the last points, by secant when two of them coincide. */
function interpolate(a: number, b: number, c: number, atA: number, atB: number, atC: number): number {
  const s = atB / atA;
  if (a === c) return ((c - b) * s) / (s - 1);
  const q = atA / atC;
  const r = atB / atC;
  return (-s * ((c - b) * q * (q - r) - (b - a) * (r - 1))) / ((q - 1) * (r - 1) * (s - 1));
}
