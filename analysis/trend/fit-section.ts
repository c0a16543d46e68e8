import { findMaximum, findRoot } from '../statistics/index.ts';
import {
  jointStasis,
  jointWalk,
  stepsOfStasis,
  stepsOfWalk,
  type SectionSeries,
} from './section-likelihoods.ts';
import {
  fitSectionModel,
  profileFall,
  samplingVariances,
  type Profile,
  type SectionForm,
  type SectionLevel,
  type SectionModel,
  type SectionModelName,
} from './section.ts';

/** Why no models are fitted to a section. */
export type NoSection = 'fewer-than-three-levels' | 'equal-ages' | 'no-variance';

/**
 * Fits the three models of Hunt (2006) to the levels of a section by largest likelihood, with their corrected criteria,
 * weights and limits. Levels may come in any order. `pooled` shares one variance among individuals over all levels.
 */
export function fitSection(
  levels: readonly SectionLevel[],
  options: { readonly form: SectionForm; readonly pooled: boolean },
): SectionModel[] | NoSection {
  if (levels.length < 3) return 'fewer-than-three-levels';
  const ordered = [...levels].sort((a, b) => a.elapsedMyr - b.elapsedMyr);
  const startMyr = ordered[0]!.elapsedMyr;
  const elapsedMyr = ordered.map((level) => level.elapsedMyr - startMyr);
  if (elapsedMyr.some((myr, k) => k > 0 && !(myr > elapsedMyr[k - 1]!))) return 'equal-ages';
  const errors = samplingVariances(ordered, options.pooled);
  if (errors.some((error) => !(error > 0))) return 'no-variance';
  const series = { elapsedMyr, means: ordered.map(({ mean }) => mean), samplingVariances: errors };
  return weigh(modelsOf(series, options.form));
}

type Fitted = Omit<SectionModel, 'weight'>;

function modelsOf(series: SectionSeries, form: SectionForm): Fitted[] {
  const walk = form === 'joint' ? jointWalk : stepsOfWalk;
  const stasis = form === 'joint' ? jointStasis : stepsOfStasis;
  const observations = series.means.length - (form === 'joint' ? 0 : 1);
  const scatter = scatterOf(series.means, series.samplingVariances);
  const walkScale = scatter / series.elapsedMyr.at(-1)!;
  const free = form === 'joint' ? 1 : 0;
  const fit = (
    name: SectionModelName,
    profile: (variance: number) => Profile,
    parameters: number,
    scale: number,
  ) => fitSectionModel(name, profile, { parameters, observations, scale });
  const directed = fit('directional-walk', (variance) => walk(series, variance, true), 2 + free, walkScale);
  return [
    fit('unbiased-walk', (variance) => walk(series, variance, false), 1 + free, walkScale),
    { ...directed, meanStepLimits: stepLimits(series, walk, directed, walkScale) },
    fit('stasis', (variance) => stasis(series, variance), 2, scatter),
  ];
}

/** Limits of the mean step by a fall of 1.92 in log-likelihood, the variance and the level at their best for each. */
function stepLimits(
  series: SectionSeries,
  walk: typeof jointWalk,
  fitted: Fitted,
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
function weigh(models: readonly Fitted[]): SectionModel[] {
  const criteria = models.map(({ aicc }) => aicc);
  if (criteria.some((aicc) => aicc === null)) return models.map((model) => ({ ...model, weight: null }));
  const least = Math.min(...(criteria as number[]));
  const raw = (criteria as number[]).map((aicc) => Math.exp((least - aicc) / 2));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return models.map((model, k) => ({ ...model, weight: raw[k]! / total }));
}
