import type { NoEstimate, TraitAnswer } from '../../../analysis/estimate/index.ts';
import type { Report } from '../findings/report.ts';
import type { Span } from '../source/source-text.ts';
import type { DatedLineageTree } from './date-trees.ts';
import type { TraitEvidence } from './estimate-lineage-trait.ts';

/** What an estimate can tell its author. */
export type EstimateFinding = 'cannot-estimate' | 'rate-at-zero';

/**
 * Tells why relatives could not be asked, where an animal of the tree needs them, and of values that leave no rate of change.
 * Gives the code of what was told, so that one mistake is told once.
 */
export function warnOfEstimates(
  { observed }: TraitEvidence,
  tree: DatedLineageTree,
  answer: TraitAnswer,
  where: Span,
  report: Report,
): EstimateFinding | undefined {
  const hasMean = (taxon: string) => observed.taxa.get(taxon)?.mean !== undefined;
  // a trait that nobody of the tree shows asks nothing of relatives
  const wanted = [...tree.taxa].some(hasMean) && ![...tree.taxa].every(hasMean);
  const name = observed.trait.id;
  if (!answer.estimated) {
    if (!wanted) return undefined;
    report.add(
      'cannot-estimate',
      where,
      `"${name}" cannot be estimated on the tree "${tree.id}": ${refusals[answer.reason]}`,
      'its missing values stay unknown until the records say more',
    );
    return 'cannot-estimate';
  }
  if (answer.model.compared.some((each) => each.name === answer.model.name && each.note)) {
    report.add(
      'rate-at-zero',
      where,
      `the values of "${name}" differ by no more than their errors, so they may not have changed at all`,
      'more specimens narrow the errors; until then its estimates are wide',
    );
    return 'rate-at-zero';
  }
  return undefined;
}

const refusals: Record<NoEstimate, string> = {
  'fewer-than-four': 'fewer than four of its animals are measured',
  'fewer-than-five-for-trend': 'a trend needs five measured animals',
  'exact-values-equal': 'all its values are the same, without any error',
  'trend-not-told': 'its animals are all of one age, so no trend can be told',
  'trend-without-scatter': 'its values lie on one straight line through time, without any error',
};
