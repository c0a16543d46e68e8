/*
 * Ages: the chronostratigraphic chart, what is known of a bed's age, dates, interpolation, order of beds, sampled ages
 * that obey superposition, and how far a last find may be from the last of its kind.
 */
export {
  chartCitation,
  chartNames,
  chartUnits,
  chartVersion,
  findChartUnit,
  type ChartRank,
  type ChartUnit,
} from './chart.ts';
export { ageDrawer, drawAges, type BedsToDraw } from './draw-ages.ts';
export { ageMeanMa, ageQuantileMa, ageSigmaMa, probabilityYounger, type HorizonAge } from './horizon-age.ts';
export { intervalBetween, interpolateAge, type DatedBed, type LevelAge } from './interpolate.ts';
export { liesAbove, orderOfBeds, probabilityOlder, type BedOrder, type BedsBelow } from './order.ts';
export { findLastOccurrenceLimit, findRangeExtension, findTwoEndedExtension } from './range-extension.ts';
export { weightedMean, type WeightedMean } from './weighted-mean.ts';
