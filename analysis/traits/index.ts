/*
 * Traits of specimens: lengths, angles and ratios from landmarks, repeats and their error, spread within taxa, means
 * of taxa, scales, and the limits that broken specimens set.
 */
export { angleDegrees, angleErrorDegrees } from './angle.ts';
export { compareReadings, type Agreement } from './agreement.ts';
export { directionsWithin, findAxis, turnDirection, type AxisDefinition, type FoundAxis } from './axis.ts';
export {
  findBrokenRatioReadings,
  type AxisMeasurement,
  type BrokenRatioQuestion,
} from './broken-geometry.ts';
export { brokenAngle, brokenLength, brokenRatio, type BrokenReading } from './broken-reading.ts';
export { distanceMm, polylineError, polylineMm, projectedMm } from './length.ts';
export { limitOfBroken, roundOutward, stepFor, workingRows, type BrokenLimit } from './limit.ts';
export type { Point } from './point.ts';
export { findPooledSpread, type PooledSpread } from './pooled-spread.ts';
export { ratioOf, type RatioValue, type Reading } from './ratio.ts';
export {
  errorOfMean,
  findNestedComponents,
  findRepeatComponents,
  type NestedComponents,
  type RepeatComponents,
} from './repeats.ts';
export { errorOnScale, fromScale, isOnScale, toScale, type TraitScale } from './scale.ts';
export { geometricMean, geometricMeanError } from './size.ts';
export { checkSpread, type SpreadCheck } from './spread-check.ts';
export { errorOfPlusMinus, taxonMean, type SpecimenValue, type TaxonMean } from './taxon-mean.ts';
