/*
 * Whether a trend is real: on the tree, in a sampled section, by rank where the null hypothesis holds; rates of change,
 * and how well a tree agrees with the order of finds.
 */
export {
  congruenceOf,
  testCongruence,
  type Congruence,
  type CongruenceTest,
  type FindRange,
  type GhostRange,
} from './congruence.ts';
export { fitSection, weighSection, type NoSection } from './fit-section.ts';
export { independentPairs, type TipPair } from './independent-pairs.ts';
export { kendallTest, type RankTest } from './kendall.ts';
export { kendallOnTree, type TreeKendall } from './kendall-on-tree.ts';
export { findLevelSummary, type LevelSummary, type LevelValue } from './level-summary.ts';
export { darwins, haldanes, pooledLogDeviation, type ChangeRate, type RateSample } from './rates.ts';
export {
  samplingVariances,
  type BestModel,
  type SectionForm,
  type SectionLevel,
  type SectionModel,
  type SectionModelName,
} from './section.ts';
export { datesMoved, type DatesMoved } from './dates-moved.ts';
export { rateClasses, type RateClass } from './rate-classes.ts';
export { rateLine, ratesBetweenLevels, slopesByChance, type LevelRate } from './rate-line.ts';
export { meanRanks, spearmanTest } from './spearman.ts';
export { trendSigns, type TrendSigns } from './trend-signs.ts';
export {
  sideOf,
  trendsOn,
  verdictOf,
  type SideVerdict,
  type TreeTrend,
  type TrendVerdict,
} from './tree-trend.ts';
