import { normalProbability } from '../statistics/index.ts';
import type { DatedTree } from '../tree/index.ts';
import { columnWeight, findBestRate, findRateSearch } from './rate/fit.ts';
import { mixtureMoments, mixtureQuantile } from './mixture.ts';
import { buildNetwork, hasExactTwins, type Network } from './passes/network.ts';
import type { Observation } from './observation.ts';
import { scratchFor } from './passes/messages.ts';
import { passUpTrend, timeNetwork, type TrendPass } from './passes/pass-up-trend.ts';
import { findRateGrid } from './rate/rate-grid.ts';

/** A slope across related taxa, the rate integrated. */
export interface TreeSlope {
  readonly median: number;
  readonly interval: readonly [number, number];
  /** Two-sided probability of so steep a slope or steeper if there is none. */
  readonly pValue: number;
  readonly degreesOfFreedom: number;
  readonly standardDeviation: number;
  /** The fitted line where it was asked for, with the interval of the line, not of single taxa. */
  readonly line: readonly LinePoint[];
}

/** One point of a fitted line. */
export interface LinePoint {
  /** Million years since the root, or the predictor. */
  readonly at: number;
  readonly median: number;
  readonly interval: readonly [number, number];
}

/** Why there is no slope. */
export type NoSlope = 'fewer-than-four' | 'predictor-does-not-vary' | 'no-scatter' | 'taxa-at-one-point';

/**
 * Slope of a trait on a predictor across the taxa of a tree, by generalised least squares with Brownian residuals and
 * sampling variance (Martins and Hansen 1997, American Naturalist 149: 646–667), the rate integrated. Without sampling
 * variance it is the t test with taxa less two degrees of freedom. `time` is the million years since the root; another
 * predictor is a value a taxon, taken as exact, and taxa without one are left out. `lineAt` asks for points of the line.
 */
export function slopeOnTree(question: {
  readonly tree: DatedTree;
  readonly observations: readonly Observation[];
  readonly predictor: 'time' | ReadonlyMap<string, number>;
  readonly level?: number;
  readonly lineAt?: readonly number[];
}): TreeSlope | NoSlope {
  const { tree, predictor, level = 0.95, lineAt = [] } = question;
  const observations =
    predictor === 'time'
      ? question.observations
      : question.observations.filter(({ taxon }) => predictor.has(taxon));
  if (observations.length < 4) return 'fewer-than-four';
  if (hasExactTwins(tree, observations)) return 'taxa-at-one-point';
  const network = buildNetwork(tree, observations);
  if (predictor !== 'time' && new Set(network.observedAt).size < observations.length)
    return 'taxa-at-one-point';
  const column = predictor === 'time' ? timeNetwork(network) : predictorColumn(network, predictor);
  if (!varies(network, column)) return 'predictor-does-not-vary';
  const search = findRateSearch(network);
  const grid = search && findRateGrid(columnWeight(network, column), search);
  if (!grid) return 'no-scatter';
  const scratch = scratchFor(network.parent.length);
  const passes = Array.from(grid.rates, (rate) => passUpTrend(network, column, rate, scratch));
  const mixture = {
    weights: grid.weights,
    means: Float64Array.from(passes, ({ slope }) => slope),
    deviations: Float64Array.from(passes, ({ slopeVariance }) => Math.sqrt(slopeVariance)),
  };
  const below = passes.reduce(
    (sum, { slope, slopeVariance }, step) =>
      sum + grid.weights[step]! * normalProbability(-slope / Math.sqrt(slopeVariance)),
    0,
  );
  return {
    median: mixtureQuantile(mixture, 0.5),
    interval: [mixtureQuantile(mixture, (1 - level) / 2), mixtureQuantile(mixture, (1 + level) / 2)],
    pValue: Math.min(1, 2 * Math.min(below, 1 - below)),
    degreesOfFreedom: observations.length - 2,
    standardDeviation: Math.sqrt(mixtureMoments(mixture).variance),
    line: lineAt.map((at) => linePoint(at, passes, grid.weights, level)),
  };
}

/** Generalised least squares makes the mean at the root and the slope independent, so that their variances add. */
function linePoint(
  at: number,
  passes: readonly TrendPass[],
  weights: Float64Array,
  level: number,
): LinePoint {
  const mixture = {
    weights,
    means: Float64Array.from(passes, ({ slope, centre }) => centre.value + slope * (at - centre.time)),
    deviations: Float64Array.from(passes, ({ slopeVariance, centre }) =>
      Math.sqrt(centre.variance + (at - centre.time) ** 2 * slopeVariance),
    ),
  };
  return {
    at,
    median: mixtureQuantile(mixture, 0.5),
    interval: [mixtureQuantile(mixture, (1 - level) / 2), mixtureQuantile(mixture, (1 + level) / 2)],
  };
}

/**
 * Slope on the time since the root at the rate of largest restricted likelihood, by generalised least squares; undefined
 * where `slopeOnTree` has none. A tenth of its work and good to 1e-4, for the sign over many datings.
 */
export function findBestSlope(tree: DatedTree, observations: readonly Observation[]): number | undefined {
  if (observations.length < 4) return undefined;
  const network = buildNetwork(tree, observations);
  const time = timeNetwork(network);
  const rate = varies(network, time)
    ? findBestRate(network, 'trend', 'restricted', 'light')?.rate
    : undefined;
  if (rate === undefined) return undefined;
  const { slope } = passUpTrend(network, time, rate, scratchFor(network.parent.length));
  return Number.isFinite(slope) ? slope : undefined;
}

function predictorColumn(network: Network, predictor: ReadonlyMap<string, number>): Network {
  const ownMean = new Float64Array(network.ownMean.length);
  network.observations.forEach(({ taxon }, index) => {
    const value = predictor.get(taxon)!;
    if (!Number.isFinite(value)) throw new Error(`predictor of "${taxon}" must be a number, got ${value}`);
    ownMean[network.observedAt[index]!] = value;
  });
  return { ...network, ownMean };
}

function varies(network: Network, column: Network): boolean {
  const values = Array.from(network.observedAt, (node) => column.ownMean[node]!);
  const largest = Math.max(...values.map(Math.abs));
  return Math.max(...values) - Math.min(...values) > 1e-9 * largest;
}
