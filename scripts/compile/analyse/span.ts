import { spanOver, type SpanAnswer, type ValueSpan } from '../../../analysis/estimate/index.ts';
import { writeNewick } from '../../../analysis/tree/index.ts';
import type { Report } from '../findings/report.ts';
import type { AuthoredLineage } from '../schema/index.ts';
import { answerOnce } from '../source/remember.ts';
import type { Span } from '../source/source-text.ts';
import type { AgeSampler } from './age-sampler.ts';
import type { DatedLineageTree } from './date-trees.ts';
import { limitsIn, observationsIn, type TraitEvidence } from './estimate-lineage-trait.ts';
import { hypothesesOf } from './hypotheses.ts';

/** What the span of a trait's values is taken over. */
export interface SpanGrounds {
  trees: readonly DatedLineageTree[];
  /** Ages of the tips for the trait. */
  ages: AgeSampler;
  settings: AuthoredLineage['estimate'];
}

/** Spans by taxon, and over how many trees, rules of dating and sets of ages they are. */
export interface TraitSpan {
  spans: ReadonlyMap<string, ValueSpan>;
  trees: number;
  rules: number;
  ageSets: number;
}

/**
 * Range of each estimated value over all trees, both rules of dating where branch lengths are not given, the reference
 * ages and sampled ones. Datings that are impossible are left out; a tree that loses some is a finding.
 */
export function spanOfTrait(
  evidence: TraitEvidence,
  grounds: SpanGrounds,
  where: Span,
  report: Report,
): TraitSpan | undefined {
  const { trees, settings } = grounds;
  const taxa = new Set(trees.flatMap((tree) => [...tree.taxa]));
  const wanted = [...taxa].filter((taxon) => !evidence.observed.taxa.get(taxon)?.mean);
  if (trees.length === 0 || wanted.length === 0) return undefined;
  const hypotheses = trees.flatMap(hypothesesOf);
  const question = {
    draws: settings.ageDraws + 1,
    observations: observationsIn(taxa, evidence),
    limits: limitsIn(taxa, evidence),
    taxa: wanted,
    model: settings.model,
    seed: settings.seed,
  };
  const { ages } = grounds;
  const key = JSON.stringify([
    question,
    hypotheses.map(({ id, tree, dating }) => [id, writeNewick(tree), dating]),
    ages.key,
  ]);
  const answer = knownSpan(key, () => spanOver({ ...question, hypotheses, tipAgesOfDraw: ages.ofDraw }));
  reportFailures(answer, settings.ageDraws + 1, where, report);
  const rules = new Set(hypotheses.map(({ dating }) => dating.rule)).size;
  return {
    spans: new Map(answer.spans.map((span) => [span.taxon, span])),
    trees: trees.length,
    rules,
    ageSets: settings.ageDraws + 1,
  };
}

/** The span takes seconds and an edit of a text changes nothing in it: while an author works, equal questions are answered once. */
const knownSpan = answerOnce<SpanAnswer>(32);

function reportFailures({ failed }: SpanAnswer, draws: number, where: Span, report: Report): void {
  for (const { hypothesis, count, reason } of failed) {
    report.add(
      'span-partial',
      where,
      `the tree "${hypothesis}" could not be dated ${count} times in ${draws} sets of ages: ${reason}`,
      'the span leaves these out; an older root or narrower ages mend it',
    );
  }
}
