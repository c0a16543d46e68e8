import { estimateTrait, type Observation, type TraitAnswer } from '../../../analysis/estimate/index.ts';
import type { Report } from '../findings/report.ts';
import type { Span } from '../source/source-text.ts';
import type { DatedLineageTree } from './date-trees.ts';
import type { ObservedTrait } from './observe-trait.ts';

/** Means and sampling variances of the measured taxa that are in a tree, on the scale of the model. */
export function observationsIn(tree: DatedLineageTree, observed: ObservedTrait): Observation[] {
  return [...observed.taxa].flatMap(([taxon, { mean }]) => {
    if (!mean || !tree.taxa.has(taxon)) return [];
    return [{ taxon, mean: mean.mean, variance: mean.variance }];
  });
}

/** Asks the engine for a trait on a tree; what the engine refuses is reported at the trait, and there is no answer. */
export function estimateOn(
  tree: DatedLineageTree,
  observed: ObservedTrait,
  where: Span,
  report: Report,
): TraitAnswer | undefined {
  try {
    return estimateTrait({
      tree: tree.dated,
      observations: observationsIn(tree, observed),
      leaveOneOut: tree.reference,
    });
  } catch (error) {
    // The engine refuses with plain errors; any other kind is a mistake of the program and must not pass for a finding.
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    report.add(
      'cannot-estimate',
      where,
      `"${observed.trait.id}" cannot be estimated on the tree "${tree.id}": ${error.message}`,
      'its missing values stay unknown until the records are corrected',
    );
    return undefined;
  }
}
