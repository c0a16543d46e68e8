import { dateTree, type Dating, type DatedTree, type TipAges, type Tree } from '../tree/index.ts';
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
  for (let draw = 0; draw < question.draws; draw++) {
    const tipAges = question.tipAgesOfDraw(draw);
    for (const { id, tree, dating } of question.hypotheses) {
      try {
        widen(spans, question, dateTree(tree, dating, tipAges));
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

/** Widens the spans by the estimates on one dated tree. */
function widen(spans: Map<string, ValueSpan>, question: SpanQuestion, tree: DatedTree): void {
  const { level = 0.95, seed = 1, model: asked = 'brownian' } = question;
  const labels = new Map(tree.label.map((label, node) => [label, node]));
  const observations = question.observations.filter(({ taxon }) => labels.has(taxon));
  const taxa = question.taxa.filter((taxon) => labels.has(taxon));
  if (observations.length < 4 || taxa.length === 0) return;
  const network = buildNetwork(tree, observations);
  const nodeOfTaxon = (taxon: string) => network.nodeOf[labels.get(taxon)!]!;
  const fit = findFit(
    network,
    asked === 'auto' ? chooseModel(compareModels(network, 'light')) : asked,
    'light',
  );
  if (!fit) return;
  const measured = new Set(observations.map(({ taxon }) => taxon));
  const limits = (question.limits ?? [])
    .filter(({ taxon }) => labels.has(taxon) && !measured.has(taxon))
    .map((limit) => ({ limit, at: nodeOfTaxon(limit.taxon) }));
  const { values } = readAtRates(fit, readNodes(fit, taxa.map(nodeOfTaxon), limits, { level, seed }));
  taxa.forEach((taxon, index) => {
    const { median, interval } = values[index]!;
    const before = spans.get(taxon);
    spans.set(taxon, {
      taxon,
      middle: [
        Math.min(median, before?.middle[0] ?? Infinity),
        Math.max(median, before?.middle[1] ?? -Infinity),
      ],
      interval: [
        Math.min(interval[0], before?.interval[0] ?? Infinity),
        Math.max(interval[1], before?.interval[1] ?? -Infinity),
      ],
      over: (before?.over ?? 0) + 1,
    });
  });
}
