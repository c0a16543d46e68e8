import {
  dateTree,
  requireTipsByLabel,
  type Dating,
  type DatedTree,
  type TipAges,
  type Tree,
} from '../tree/index.ts';
import type { ValueEstimate } from './posterior.ts';
import { chooseModel, compareModels } from './models/compare-models.ts';
import { readNodes } from './estimate-nodes.ts';
import { findFit, type ModelName } from './rate/fit.ts';
import type { LimitObservation } from './limits/limit-observation.ts';
import { buildNetwork } from './passes/network.ts';
import { readAtRates } from './passes/per-rate.ts';
import type { Observation } from './observation.ts';

/** One way of dating one tree. */
export interface DatedHypothesis {
  readonly id: string;
  readonly tree: Tree;
  readonly dating: Dating;
}

/** What a span is taken over; numbers are on the scale of the model. */
export interface SpanQuestion {
  readonly hypotheses: readonly DatedHypothesis[];
  /** Ages of the tips for a numbered draw; `draws` of them are taken for every hypothesis. */
  readonly tipAgesOfDraw: (draw: number) => TipAges;
  readonly draws: number;
  readonly observations: readonly Observation[];
  readonly limits?: readonly LimitObservation[];
  readonly taxa: readonly string[];
  readonly level?: number;
  readonly model?: ModelName | 'auto';
  readonly seed?: string | number;
}

/** Range of a value's median, and from the lowest lower to the highest upper end of its interval. */
export interface ValueSpan {
  readonly taxon: string;
  readonly middle: readonly [number, number];
  readonly interval: readonly [number, number];
  /** Datings that the range is over. */
  readonly over: number;
}

/** Spans, and the datings that could not be made, with the reason of the first for each hypothesis. */
export interface SpanAnswer {
  readonly spans: readonly ValueSpan[];
  readonly tried: number;
  readonly failed: readonly {
    readonly hypothesis: string;
    readonly count: number;
    readonly reason: string;
  }[];
}

/**
 * The same values over every tree, dating rule and draw of ages: a range to print beside the headline, never mixed into
 * it. A taxon that a tree lacks is passed over there; one that no dating gives has no span.
 */
export function spanOver(question: SpanQuestion): SpanAnswer {
  const spans = new Map<string, ValueSpan>();
  const failed = new Map<string, { hypothesis: string; count: number; reason: string }>();
  const asked = question.hypotheses.map((hypothesis) => questionOn(hypothesis, question));
  for (let draw = 0; draw < question.draws; draw++) {
    const tipAges = question.tipAgesOfDraw(draw);
    for (const own of asked) {
      const { id, tree, dating } = own.hypothesis;
      try {
        widen(spans, own, dateTree(tree, dating, tipAges));
      } catch (error) {
        if (!(error instanceof Error)) throw error;
        const before = failed.get(id);
        failed.set(id, {
          hypothesis: id,
          count: (before?.count ?? 0) + 1,
          reason: before?.reason ?? error.message,
        });
      }
    }
  }
  return {
    spans: question.taxa.flatMap((taxon) => spans.get(taxon) ?? []),
    tried: question.draws * question.hypotheses.length,
    failed: [...failed.values()],
  };
}

/** What is asked of one hypothesis: only what its tree holds. */
interface TreeQuestion {
  readonly hypothesis: DatedHypothesis;
  readonly observations: readonly Observation[];
  /** Taxa wanted, and limits of taxa without an observation, each with its tip. */
  readonly wanted: readonly { readonly taxon: string; readonly tip: number }[];
  readonly limits: readonly { readonly limit: LimitObservation; readonly tip: number }[];
  readonly model: ModelName | 'auto';
  readonly options: { readonly level: number; readonly seed: string | number };
}

function questionOn(hypothesis: DatedHypothesis, question: SpanQuestion): TreeQuestion {
  const { level = 0.95, seed = 1, model = 'brownian', limits = [] } = question;
  const tips = requireTipsByLabel(hypothesis.tree);
  const observations = question.observations.filter(({ taxon }) => tips.has(taxon));
  const measured = new Set(observations.map(({ taxon }) => taxon));
  return {
    hypothesis,
    observations,
    wanted: question.taxa.flatMap((taxon) => {
      const tip = tips.get(taxon);
      return tip === undefined ? [] : [{ taxon, tip }];
    }),
    limits: limits.flatMap((limit) => {
      const tip = tips.get(limit.taxon);
      return tip === undefined || measured.has(limit.taxon) ? [] : [{ limit, tip }];
    }),
    model,
    options: { level, seed },
  };
}

/** Widens the spans by the estimates on one dated tree. */
function widen(spans: Map<string, ValueSpan>, question: TreeQuestion, tree: DatedTree): void {
  const { observations, wanted, model } = question;
  if (observations.length < 4 || wanted.length === 0) return;
  const network = buildNetwork(tree, observations);
  const fit = findFit(
    network,
    model === 'auto' ? chooseModel(compareModels(network, 'light')) : model,
    'light',
  );
  if (!fit) return;
  const nodes = wanted.map(({ tip }) => network.nodeOf[tip]!);
  const limits = question.limits.map(({ limit, tip }) => ({ limit, at: network.nodeOf[tip]! }));
  const { values } = readAtRates(fit, readNodes(fit, nodes, limits, question.options));
  wanted.forEach(({ taxon }, index) => spans.set(taxon, widened(spans.get(taxon), taxon, values[index]!)));
}

/** A span that holds one more value; that value's own where there is none yet. */
function widened(
  span: ValueSpan | undefined,
  taxon: string,
  { median, interval: [low, high] }: ValueEstimate,
): ValueSpan {
  if (!span) return { taxon, middle: [median, median], interval: [low, high], over: 1 };
  return {
    taxon,
    middle: [Math.min(median, span.middle[0]), Math.max(median, span.middle[1])],
    interval: [Math.min(low, span.interval[0]), Math.max(high, span.interval[1])],
    over: span.over + 1,
  };
}
