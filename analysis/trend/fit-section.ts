import { findMaximum, findRoot } from '../statistics/index.ts';
import {
  jointStasis,
  jointWalk,
  stepsOfStasis,
  stepsOfWalk,
  type SectionSeries,
} from './section-likelihoods.ts';
import {
  bestSectionModel,
  profileFall,
  samplingVariances,
  varianceLimitsOf,
  type BestModel,
  type Search,
  type SectionForm,
  type SectionLevel,
  type SectionModel,
  type SectionModelName,
  type VarianceProfile,
} from './section.ts';

/** Why no models are fitted to a section. */
export type NoSection = 'fewer-than-three-levels' | 'equal-ages' | 'no-variance';

interface Options {
  readonly form: SectionForm;
  /** One variance among individuals, shared over all levels. */
  readonly pooled: boolean;
}

/**
 * Fits the three models of Hunt (2006) to the levels of a section by largest likelihood, with their corrected criteria,
 * weights and limits. Levels may come in any order.
 */
export function fitSection(levels: readonly SectionLevel[], options: Options): SectionModel[] | NoSection {
  const series = seriesOf(levels, options.pooled);
  if (typeof series === 'string') return series;
  return weigh(
    plansOf(series, options.form).map((plan): Fitted => {
      const best = bestOf(plan);
      const fitted = { ...best, varianceLimits: varianceLimitsOf(best, plan.profile, plan.scale) };
      return plan.walk
        ? { ...fitted, meanStepLimits: stepLimits(series, plan.walk, best, plan.scale) }
        : fitted;
    }),
  );
}

/**
 * The same without limits, for many fits: a tenth of the time, weights to six digits. `near` are the variances of a fit
 * of nearly the same levels, where the search begins.
 */
export function weighSection(
  levels: readonly SectionLevel[],
  options: Options,
  near?: ReadonlyMap<SectionModelName, number>,
): (BestModel & Pick<SectionModel, 'weight'>)[] | NoSection {
  const series = seriesOf(levels, options.pooled);
  if (typeof series === 'string') return series;
  return weigh(
    plansOf(series, options.form).map((plan) =>
      bestOf(plan, { tolerance: 1e-6, near: near?.get(plan.name) }),
    ),
  );
}

function seriesOf(levels: readonly SectionLevel[], pooled: boolean): SectionSeries | NoSection {
  if (levels.length < 3) return 'fewer-than-three-levels';
  const ordered = [...levels].sort((a, b) => a.elapsedMyr - b.elapsedMyr);
  const startMyr = ordered[0]!.elapsedMyr;
  const elapsedMyr = ordered.map((level) => level.elapsedMyr - startMyr);
  if (elapsedMyr.some((myr, k) => k > 0 && !(myr > elapsedMyr[k - 1]!))) return 'equal-ages';
  const errors = samplingVariances(ordered, pooled);
  if (errors.some((error) => !(error > 0))) return 'no-variance';
  return { elapsedMyr, means: ordered.map(({ mean }) => mean), samplingVariances: errors };
}

type Fitted = Omit<SectionModel, 'weight'>;

/** How one model is fitted: its profile, what it counts, and for a directed walk the walk itself. */
interface Plan {
  readonly name: SectionModelName;
  readonly profile: VarianceProfile;
  readonly parameters: number;
  readonly observations: number;
  readonly scale: number;
  readonly walk?: typeof jointWalk;
}

function bestOf(plan: Plan, search?: Search): BestModel {
  return bestSectionModel(plan.name, plan.profile, plan, search);
}

function plansOf(series: SectionSeries, form: SectionForm): Plan[] {
  const walk = form === 'joint' ? jointWalk : stepsOfWalk;
  const stasis = form === 'joint' ? jointStasis : stepsOfStasis;
  const observations = series.means.length - (form === 'joint' ? 0 : 1);
  const scatter = scatterOf(series.means, series.samplingVariances);
  const walkScale = scatter / series.elapsedMyr.at(-1)!;
  const free = form === 'joint' ? 1 : 0;
  return [
    {
      name: 'unbiased-walk',
      profile: (variance) => walk(series, variance, false),
      parameters: 1 + free,
      observations,
      scale: walkScale,
    },
    {
      name: 'directional-walk',
      profile: (variance) => walk(series, variance, true),
      parameters: 2 + free,
      observations,
      scale: walkScale,
      walk,
    },
    {
      name: 'stasis',
      profile: (variance) => stasis(series, variance),
      parameters: 2,
      observations,
      scale: scatter,
    },
  ];
}

/** Limits of the mean step by a fall of 1.92 in log-likelihood, the variance and the level at their best for each. */
function stepLimits(
  series: SectionSeries,
  walk: typeof jointWalk,
  fitted: BestModel,
  scale: number,
): readonly [number, number] {
  const logScale = Math.log(scale);
  const over = (meanStep: number) => {
    const of = (logVariance: number) => walk(series, Math.exp(logVariance), true, { meanStep }).logLikelihood;
    let top = logScale;
    let atTop = -Infinity;
    for (let up = -21; up <= 12; up += 3) {
      const value = of(logScale + up);
      if (value > atTop) [top, atTop] = [logScale + up, value];
    }
    const inside = findMaximum(of, top - 3, top + 3, 1e-7).value;
    return (
      Math.max(inside, walk(series, 0, true, { meanStep }).logLikelihood) - fitted.logLikelihood + profileFall
    );
  };
  const centre = fitted.meanStep!;
  const unit = Math.sqrt(scale / series.elapsedMyr.at(-1)!) || 1;
  const edge = (sign: number) => {
    let outer = centre + sign * unit;
    while (over(outer) > 0 && Math.abs(outer - centre) < 1e6 * unit) outer = centre + 2 * (outer - centre);
    return findRoot(over, outer, centre, 1e-9 * unit);
  };
  return [edge(-1), edge(1)];
}

/** Variance of the means beyond their sampling, or their sampling variance where there is none beyond. */
function scatterOf(means: readonly number[], errors: readonly number[]): number {
  const centre = means.reduce((sum, mean) => sum + mean, 0) / means.length;
  const squares = means.reduce((sum, mean) => sum + (mean - centre) ** 2, 0) / means.length;
  return Math.max(squares, errors.reduce((sum, error) => sum + error, 0) / errors.length);
}

/** Weights of evidence by the corrected criterion (Burnham and Anderson 2002, section 2.9); null where one has none. */
function weigh<Model extends BestModel>(models: readonly Model[]): (Model & Pick<SectionModel, 'weight'>)[] {
  const criteria = models.map(({ aicc }) => aicc);
  if (criteria.some((aicc) => aicc === null)) return models.map((model) => ({ ...model, weight: null }));
  const least = Math.min(...(criteria as number[]));
  const raw = (criteria as number[]).map((aicc) => Math.exp((least - aicc) / 2));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return models.map((model, k) => ({ ...model, weight: raw[k]! / total }));
}
