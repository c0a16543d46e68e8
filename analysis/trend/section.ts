import { findMaximum, findRoot, type Maximum } from '../statistics/index.ts';
import { correctedCriterion } from '../estimate/index.ts';

/** Mean of a trait at one level of a section. */
export interface SectionLevel {
  /** Time since the oldest level, million years; no two levels share one. */
  readonly elapsedMyr: number;
  readonly mean: number;
  /** Variance among individuals, and how many there are. */
  readonly variance: number;
  readonly n: number;
}

/** Three ways in which a lineage may have moved through a section (Hunt 2006, Paleobiology 32: 578–601). */
export type SectionModelName = 'unbiased-walk' | 'directional-walk' | 'stasis';

/** One model fitted by largest likelihood. */
export interface SectionModel {
  readonly name: SectionModelName;
  readonly logLikelihood: number;
  readonly parameters: number;
  readonly aicc: number | null;
  /** Share of the weight of evidence among the three by the corrected criterion; null where one has none. */
  readonly weight: number | null;
  /** Variance of steps a million years for a walk, of levels about the optimum for stasis; 0 on its bound. */
  readonly variance: number;
  readonly varianceOnBound: boolean;
  /** Limits by a fall of 1.92 in log-likelihood, the other parameters at their best. */
  readonly varianceLimits: readonly [number, number];
  /** Mean step a million years, for the directional walk. */
  readonly meanStep?: number;
  readonly meanStepLimits?: readonly [number, number];
  /** Value at the oldest level of a walk, or the optimum of stasis; the step form of a walk has none. */
  readonly level?: number;
}

/**
 * How the levels enter: jointly, or step by step from each level to the next. The two count different numbers and must
 * never be compared with each other.
 */
export type SectionForm = 'joint' | 'steps';

/** Sampling variance of each level's mean; pooled shares one variance among individuals over all levels. */
export function samplingVariances(
  levels: readonly Pick<SectionLevel, 'variance' | 'n'>[],
  pooled: boolean,
): number[] {
  const df = levels.reduce((sum, { n }) => sum + n - 1, 0);
  if (!pooled || df === 0) return levels.map(({ variance, n }) => variance / n);
  const shared = levels.reduce((sum, { variance, n }) => sum + (n > 1 ? (n - 1) * variance : 0), 0) / df;
  return levels.map(({ n }) => shared / n);
}

/** Log-likelihood with the means (start, step, optimum) at their best or as given, and those means. */
export interface Profile {
  readonly logLikelihood: number;
  readonly level?: number;
  readonly meanStep?: number;
}

/** Log-likelihood of a model at one variance, its means profiled out. */
export type VarianceProfile = (variance: number) => Profile;

/** A model at its best variance, its limits not looked for. */
export type BestModel = Omit<SectionModel, 'weight' | 'varianceLimits' | 'meanStepLimits'>;

/** How closely a best variance is looked for, and where it was in a fit of nearly the same levels. */
export interface Search {
  readonly tolerance: number;
  readonly near?: number | undefined;
}

/** Finds the best variance of a model, from 0 up, by its profile. */
export function bestSectionModel(
  name: SectionModelName,
  profile: VarianceProfile,
  facts: { readonly parameters: number; readonly observations: number; readonly scale: number },
  search: Search = { tolerance: 1e-10 },
): BestModel {
  const inside = peakOf((logVariance) => profile(Math.exp(logVariance)).logLikelihood, facts.scale, search);
  const atBound = profile(0);
  const onBound = !(inside.value > atBound.logLikelihood + 1e-9);
  const variance = onBound ? 0 : Math.exp(inside.at);
  const { logLikelihood, level, meanStep } = onBound ? atBound : profile(variance);
  return {
    name,
    logLikelihood,
    parameters: facts.parameters,
    aicc: correctedCriterion(logLikelihood, facts.parameters, facts.observations),
    variance,
    varianceOnBound: onBound,
    ...(level === undefined ? {} : { level }),
    ...(meanStep === undefined ? {} : { meanStep }),
  };
}

/** Highest point over the log of the variance: by steps over thirty units, or close to a known one where it is still there. */
function peakOf(of: (logVariance: number) => number, scale: number, { tolerance, near }: Search): Maximum {
  if (near !== undefined && near > 0) {
    const middle = Math.log(near);
    const found = findMaximum(of, middle - 1, middle + 1, tolerance);
    if (Math.abs(found.at - middle) < 0.9) return found;
  }
  const centre = Math.log(scale);
  let best = centre;
  let atBest = -Infinity;
  for (let up = 6; up > -24; up--) {
    const value = of(centre + up);
    if (value > atBest) [best, atBest] = [centre + up, value];
  }
  return findMaximum(of, best - 1, best + 1, tolerance);
}

/** Half of the upper 5% point of chi-squared with one degree of freedom. */
export const profileFall = 1.920729410347062;

/** Limits of the variance of a model at its best, by its profile; `scale` is where the search begins for one on its bound. */
export function varianceLimitsOf(
  { variance, varianceOnBound, logLikelihood: top }: BestModel,
  profile: VarianceProfile,
  scale: number,
): readonly [number, number] {
  const over = (logVariance: number) => profile(Math.exp(logVariance)).logLikelihood - top + profileFall;
  const centre = Math.log(scale);
  const start = varianceOnBound ? centre - 24 : Math.log(variance);
  let high = start + 0.5;
  while (over(high) > 0 && high < centre + 40) high += 0.5;
  let low = start - 0.5;
  while (over(low) > 0 && low > centre - 40) low -= 0.5;
  const zeroIsOut = profile(0).logLikelihood < top - profileFall;
  return [
    !varianceOnBound && zeroIsOut ? Math.exp(findRoot(over, low, start, 1e-9)) : 0,
    Math.exp(findRoot(over, start, high, 1e-9)),
  ];
}
