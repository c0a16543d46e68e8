import type { PlanePoint } from './plane.ts';

/** x and y of many points, apart, to be moved in place. */
export interface PointRun {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Squared distances of many points from one landmark, and their natural logarithms. */
export interface SquaredDistances {
  readonly squared: Float64Array;
  readonly logs: Float64Array;
}

/** Room for the distances of so many points, to be filled for one landmark after another. */
export function distancesRoom(count: number): SquaredDistances {
  return { squared: new Float64Array(count), logs: new Float64Array(count) };
}

/**
 * Fills in r² and ln r² of each point, twice as fast as with `Math.log`: exponent and first seven bits of the fraction from
 * tables, the rest by a polynomial, as Tang does (1990, ACM Transactions on Mathematical Software 16: 378–400). Good to
 * 4.5e-16, of the logarithm where that is above 1: as many digits as a number holds. Below 2.3e-308, and so on the landmark
 * itself, the logarithm is some finite number, and r² ln r² as good as zero.
 */
export function fillDistances(
  { x, y }: PointRun,
  [landmarkX, landmarkY]: PlanePoint,
  { squared, logs }: SquaredDistances,
): void {
  const count = x.length;
  if (count > places.length) growScratch(count);
  for (let point = 0; point < count; point++) {
    const dx = x[point]! - landmarkX;
    const dy = y[point]! - landmarkY;
    const square = dx * dx + dy * dy;
    squared[point] = square;
    fractions[point] = square;
  }
  // A loop of its own: a number that is read right after one half of it was written makes the processor wait.
  for (let point = 0; point < count; point++) {
    const high = halves[2 * point + highHalf]!;
    const step = (high >>> 13) & (steps - 1);
    places[point] = step;
    logs[point] = logOfExponent[(high >>> 20) & 2047]! + logOfStep[step]!;
    halves[2 * point + highHalf] = (high & 0xfffff) | 0x3ff00000;
  }
  for (let point = 0; point < count; point++) {
    const rest = fractions[point]! * inverseOfStep[places[point]!]! - 1;
    const square = rest * rest;
    const polynomial = -0.5 + rest * (1 / 3) + square * (-0.25 + rest * 0.2 - square * (1 / 6));
    logs[point]! += rest + square * polynomial;
  }
}

/** Where the half with the exponent lies: second on nearly every machine. */
const highHalf = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1 ? 1 : 0;

/** Steps in which a fraction from 1 to 2 is tabled. */
const steps = 128;
const inverseOfStep = Float64Array.from({ length: steps }, (_, step) => 1 / (1 + (step + 0.5) / steps));
const logOfStep = inverseOfStep.map((inverse) => -Math.log(inverse));
const logOfExponent = Float64Array.from({ length: 2048 }, (_, exponent) => (exponent - 1023) * Math.LN2);

/** Fractions, the halves of the same numbers, and the step of each: nothing stays in them between two calls. */
let fractions = new Float64Array(0);
let halves = new Int32Array(0);
let places = new Uint8Array(0);

function growScratch(count: number): void {
  fractions = new Float64Array(count);
  halves = new Int32Array(fractions.buffer);
  places = new Uint8Array(count);
}
