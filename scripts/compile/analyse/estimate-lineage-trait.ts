import {
  compareSensitivity,
  estimateTrait,
  type LimitObservation,
  type Observation,
  type SensitivityModel,
  type TraitAnswer,
  type TraitQuestion,
} from '../../../analysis/estimate/index.ts';
import { errorOnScale, isOnScale, toScale, type TraitScale } from '../../../analysis/traits/index.ts';
import { writeNewick } from '../../../analysis/tree/index.ts';
import type { Report } from '../findings/report.ts';
import type { AuthoredLineage } from '../schema/index.ts';
import { answerOnce } from '../source/remember.ts';
import type { Span } from '../source/source-text.ts';
import type { DatedLineageTree } from './date-trees.ts';
import type { SpecimenLimit } from './limits.ts';
import type { ObservedTrait } from './observe-trait.ts';

/** How much is computed: everything, or only what a check needs to find mistakes. */
export type Depth = 'whole' | 'check';

/** What an estimate is made from: means of measured taxa, and limits of broken specimens of the others. */
export interface TraitEvidence {
  observed: ObservedTrait;
  limits: ReadonlyMap<string, readonly SpecimenLimit[]>;
}

/** Means and sampling variances of the measured taxa that are in a tree, on the scale of the model. */
export function observationsIn(taxa: ReadonlySet<string>, { observed }: TraitEvidence): Observation[] {
  return [...observed.taxa].flatMap(([taxon, { mean }]) => {
    if (!mean || !taxa.has(taxon)) return [];
    return [{ taxon, mean: mean.mean, variance: mean.variance }];
  });
}

/** Limits of broken specimens of taxa without a mean that are in a tree, each on a twig of the spread within a taxon and its own error. */
export function limitsIn(taxa: ReadonlySet<string>, { observed, limits }: TraitEvidence): LimitObservation[] {
  const { scale, spread } = observed;
  return [...limits].flatMap(([taxon, own]) => {
    if (!taxa.has(taxon) || observed.taxa.get(taxon)?.mean) return [];
    return own.flatMap(({ specimen, limit: { bare } }) => {
      const atLeast = endOnScale(scale, bare.atLeast);
      const atMost = endOnScale(scale, bare.atMost);
      const at = bare.atLeast ?? bare.atMost;
      if ((atLeast === undefined && atMost === undefined) || at === undefined || !isOnScale(scale, at))
        return [];
      const error = errorOnScale(scale, at, bare.error);
      return [
        {
          taxon,
          specimen: specimen.record.value.id,
          atLeast,
          atMost,
          twigVariance: (spread?.variance ?? 0) + error ** 2,
        },
      ];
    });
  });
}

function endOnScale(scale: TraitScale, end: number | undefined): number | undefined {
  return end !== undefined && isOnScale(scale, end) ? toScale(scale, end) : undefined;
}

/** Leaving each taxon out in turn takes the square of their number in time: beyond this it is not done, and the list is empty. */
const mostLeftOut = 300;

/** Estimates take most of a compile, and an edit of a text changes nothing in them. */
const knownAnswer = answerOnce<TraitAnswer>(32);

const knownSensitivity = answerOnce<SensitivityModel[]>(32);

/** How well a pull to an optimum and Pagel's lambda would do on a tree: for a line of words, never for a value. */
export function sensitivityOn(tree: DatedLineageTree, evidence: TraitEvidence): SensitivityModel[] {
  const observations = observationsIn(tree.taxa, evidence);
  const key = JSON.stringify([writeNewick(tree.dated), observations]);
  return knownSensitivity(key, () => compareSensitivity(tree.dated, observations));
}

/** What is no number is never printed: the limits then stand in their cards and take no part in estimates. */
function finiteAnswer(question: TraitQuestion): TraitAnswer {
  const answer = estimateTrait(question);
  return isFinite(answer) ? answer : estimateTrait({ ...question, limits: [] });
}

function isFinite(answer: TraitAnswer): boolean {
  if (!answer.estimated) return true;
  return [...answer.nodes, ...answer.leaveOneOut].every(({ median, interval }) =>
    [median, ...interval].every(Number.isFinite),
  );
}

/** Asks the engine for a trait on a tree; what the engine refuses is reported at the trait, and there is no answer. */
export function estimateOn(
  tree: DatedLineageTree,
  evidence: TraitEvidence,
  { model, seed }: AuthoredLineage['estimate'],
  { where, report, depth }: { where: Span; report: Report; depth: Depth },
): TraitAnswer | undefined {
  try {
    const observations = observationsIn(tree.taxa, evidence);
    const question = {
      tree: tree.dated,
      observations,
      model,
      seed,
      leaveOneOut: depth === 'whole' && observations.length <= mostLeftOut,
    };
    if (depth === 'check') return estimateTrait(question);
    const limits = limitsIn(tree.taxa, evidence);
    const key = JSON.stringify([writeNewick(tree.dated), observations, limits, model, seed]);
    return knownAnswer(key, () => finiteAnswer({ ...question, limits }));
  } catch (error) {
    // The engine refuses with plain errors; any other kind is a mistake of the program and must not pass for a finding.
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    report.add(
      'cannot-estimate',
      where,
      `"${evidence.observed.trait.id}" cannot be estimated on the tree "${tree.id}": ${error.message}`,
      'its missing values stay unknown until the records are corrected',
    );
    return undefined;
  }
}
