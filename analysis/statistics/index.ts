/* Distribution functions, root finding and maxima, without dependencies: the same code runs in the browser. */
export { errorComplement, scaledErrorComplement, tailFromBell } from './error-function.ts';
export {
  normalDensity,
  normalHazard,
  normalProbability,
  normalUpperTail,
  logNormalUpperTail,
} from './normal.ts';
export { inverseNormal } from './inverse-normal.ts';
export { logGamma } from './gamma.ts';
export { incompleteBeta } from './incomplete-beta.ts';
export { studentProbability, studentQuantile, studentUpperTail } from './student.ts';
export { chiSquareQuantile, chiSquareUpperTail } from './chi-square.ts';
export { findResistantLine, median, type Line } from './resistant-line.ts';
export { findRoot } from './root.ts';
export { findMaximum, type Maximum } from './maximum.ts';
