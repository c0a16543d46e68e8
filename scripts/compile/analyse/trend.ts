import { findBrownianRate, type DatedHypothesis, type NoSlope } from '../../../analysis/estimate/index.ts';
import {
  kendallOnTree,
  trendSigns,
  trendsOn,
  verdictOf,
  type TreeKendall,
  type TreeTrend,
  type TrendSigns,
  type TrendVerdict,
} from '../../../analysis/trend/index.ts';
import { requireTipsByLabel, rootOf, writeNewick, type DatedTree } from '../../../analysis/tree/index.ts';
import { answerOnce } from '../source/remember.ts';
import { observationsIn, type TraitEvidence } from './estimate-lineage-trait.ts';
import { unlessRefused } from './engine-refusal.ts';
import { everyHypothesis, findDated } from './hypotheses.ts';
import type { SpanGrounds } from './span.ts';

/** One row of a trend: a tree, a rule of dating, the slope or why there is none, and its sign over sampled ages. */
export interface TrendRow {
  tree: string;
  rule: string;
  slope: TreeTrend['slope'] | 'not-dated';
  signs: TrendSigns;
}

/** Why nothing can be told of a trend. */
export type NoTrend = NoSlope | 'no-tree' | 'not-clear' | 'trees-disagree';

/** What is known of a trait's trend; slopes are on the scale of the model. */
export interface TraitTrend {
  verdict: TrendVerdict;
  reason: NoTrend | undefined;
  rows: TrendRow[];
  /** Age in Ma of the points of the reference row's line. */
  lineAgesMa: number[];
  rank: TreeKendall | undefined;
  taxa: number;
}

/** Points of a fitted line: enough for its interval to look smooth. */
const linePoints = 25;

/** Data sets simulated for the description by ranks. */
const rankDraws = 999;

/** Trend of a trait on every tree and rule of dating, the reference tree and its own rule first. */
export function trendOfTrait(evidence: TraitEvidence, grounds: SpanGrounds): TraitTrend {
  const { trees } = grounds;
  const hypotheses = everyHypothesis(trees);
  if (hypotheses.length === 0) return { ...nothing, reason: 'no-tree' };
  const observations = observationsIn(new Set(trees.flatMap((tree) => [...tree.taxa])), evidence);
  const { ages, settings } = grounds;
  const { seed, ageDraws } = settings;
  const key = JSON.stringify([
    observations,
    hypotheses.map(({ id, tree, dating }) => [id, writeNewick(tree), dating]),
    ages.key,
    [seed, ageDraws],
  ]);
  return knownTrend(key, () => {
    const question = { observations, tipAgesOfDraw: ages.ofDraw, draws: ageDraws + 1 };
    return trendFrom(hypotheses, question, seed);
  });
}

/** Datings take a while, and an edit of a text changes nothing in them. */
const knownTrend = answerOnce<TraitTrend>(32);

const nothing: Omit<TraitTrend, 'reason'> = {
  verdict: 'cannot-tell',
  rows: [],
  lineAgesMa: [],
  rank: undefined,
  taxa: 0,
};

type Question = Omit<Parameters<typeof trendSigns>[0], 'hypothesis'>;

function trendFrom(
  hypotheses: readonly DatedHypothesis[],
  question: Question,
  seed: string | number,
): TraitTrend {
  const referenceMa = question.tipAgesOfDraw(0);
  const reference = findDated(hypotheses[0]!, referenceMa);
  const observed = question.observations.filter(({ taxon }) => reference?.label.includes(taxon));
  const lineAgesMa = reference ? lineAges(reference, observed) : [];
  const rows = hypotheses.map((hypothesis, index): TrendRow => {
    const dated = index === 0 ? reference : findDated(hypothesis, referenceMa);
    const lineAt = index === 0 && dated ? lineAgesMa.map((ageMa) => dated.ageMa[rootOf(dated)]! - ageMa) : [];
    return {
      tree: hypothesis.id,
      rule: hypothesis.dating.rule,
      slope: dated ? slopeOn(hypothesis.id, dated, question.observations, lineAt) : 'not-dated',
      signs: trendSigns({ ...question, hypothesis }),
    };
  });
  const told = rows.flatMap(({ tree, slope }) => (slope === 'not-dated' ? [] : [{ id: tree, slope }]));
  const verdict = rows[0]!.slope === 'not-dated' ? 'cannot-tell' : verdictOf(told);
  return {
    verdict,
    reason: verdict === 'cannot-tell' ? reasonOf(rows) : undefined,
    rows,
    lineAgesMa,
    rank: reference && typeof rows[0]!.slope !== 'string' ? rankOf(reference, observed, seed) : undefined,
    taxa: observed.length,
  };
}

/** Two exact taxa that no time separates are refused by the engine: they stand at one point of the tree. */
function slopeOn(
  id: string,
  tree: DatedTree,
  observations: Question['observations'],
  lineAt: readonly number[],
): TreeTrend['slope'] {
  const found = unlessRefused(() => trendsOn([{ id, tree }], observations, { lineAt })[0]!.slope);
  return found ?? 'taxa-at-one-point';
}

/** Even steps from the oldest to the youngest taxon observed: a line says nothing beyond them. */
function lineAges(tree: DatedTree, observed: Question['observations']): number[] {
  const tips = requireTipsByLabel(tree);
  const ages = observed.map(({ taxon }) => tree.ageMa[tips.get(taxon)!]!);
  if (ages.length === 0) return [];
  const [oldest, youngest] = [Math.max(...ages), Math.min(...ages)];
  return Array.from(
    { length: linePoints },
    (_, step) => oldest + ((youngest - oldest) * step) / (linePoints - 1),
  );
}

function reasonOf(rows: readonly TrendRow[]): NoTrend {
  const [first] = rows;
  if (!first || first.slope === 'not-dated') return 'no-tree';
  if (typeof first.slope === 'string') return first.slope;
  return first.slope.pValue > 0.05 ? 'not-clear' : 'trees-disagree';
}

function rankOf(
  tree: DatedTree,
  observations: Question['observations'],
  seed: string | number,
): TreeKendall | undefined {
  const rate = findBrownianRate(tree, observations);
  if (rate === undefined) return undefined;
  const rank = kendallOnTree({ tree, observations, rate, draws: rankDraws, seed });
  return Number.isFinite(rank.tau) ? rank : undefined;
}
