import { findBestSlope, type DatedHypothesis, type Observation } from '../estimate/index.ts';
import { dateTree, type TipAges } from '../tree/index.ts';

/** Which way a trend goes over many sets of ages, for one tree and rule of dating. */
export interface TrendSigns {
  /** Datings that could be made and give a slope. */
  readonly datings: number;
  readonly rising: number;
  readonly falling: number;
  /** Least and greatest slope, units of the scale a million years; NaN without a dating. */
  readonly range: readonly [number, number];
}

/** Signs of the trend on one tree and rule over numbered sets of tip ages; datings that are impossible are passed over. */
export function trendSigns(question: {
  readonly hypothesis: DatedHypothesis;
  readonly observations: readonly Observation[];
  readonly tipAgesOfDraw: (draw: number) => TipAges;
  readonly draws: number;
}): TrendSigns {
  const { tree, dating } = question.hypothesis;
  const tips = new Set(tree.label);
  const observations = question.observations.filter(({ taxon }) => tips.has(taxon));
  const slopes: number[] = [];
  for (let draw = 0; draw < question.draws; draw++) {
    try {
      const slope = findBestSlope(dateTree(tree, dating, question.tipAgesOfDraw(draw)), observations);
      if (slope !== undefined) slopes.push(slope);
    } catch (error) {
      if (!(error instanceof Error) || error.constructor !== Error) throw error;
    }
  }
  return {
    datings: slopes.length,
    rising: slopes.filter((slope) => slope > 0).length,
    falling: slopes.filter((slope) => slope < 0).length,
    range: slopes.length > 0 ? [Math.min(...slopes), Math.max(...slopes)] : [NaN, NaN],
  };
}
