import type { NoSlope } from '../../../analysis/estimate/index.ts';
import { trendsOn } from '../../../analysis/trend/index.ts';
import type { Report } from '../findings/report.ts';
import type { Span } from '../source/source-text.ts';
import type { DatedLineageTree } from './date-trees.ts';
import type { EstimateFinding } from './estimate-findings.ts';
import { observationsIn, type TraitEvidence } from './estimate-lineage-trait.ts';
import type { TraitTrend } from './trend.ts';

/** What is known of a trait before its trend is told of: its trend, where it was computed, and what its estimate already said. */
interface Known {
  trend: TraitTrend | undefined;
  told: EstimateFinding | undefined;
}

/** Tells why nothing can be said of a measured trait's change in time on the reference tree, unless its estimate told the same. */
export function warnOfTrend(
  evidence: TraitEvidence,
  tree: DatedLineageTree,
  { trend, told }: Known,
  where: Span,
  report: Report,
): void {
  const observations = observationsIn(tree.taxa, evidence);
  if (observations.length === 0 || told === 'cannot-estimate') return;
  const slope =
    trend?.rows[0]?.slope ?? trendsOn([{ id: tree.id, tree: tree.dated }], observations)[0]!.slope;
  if (typeof slope !== 'string' || !isRefusal(slope)) return;
  // Values that are equal within their errors are one mistake, and the estimate has told it.
  if (slope === 'no-scatter' && told === 'rate-at-zero') return;
  const [problem, advice] = refusals[slope];
  report.add(
    'trend-untold',
    where,
    `whether "${evidence.observed.trait.id}" rises or falls cannot be told on the tree "${tree.id}": ${problem}`,
    `${advice}; until then pages say that one cannot tell`,
  );
}

/** Two exact animals at one point are refused by the estimate before. */
const refusals: Record<Exclude<NoSlope, 'taxa-at-one-point'>, readonly [problem: string, advice: string]> = {
  'fewer-than-four': ['fewer than four of its animals are measured', 'measure more animals of the tree'],
  'predictor-does-not-vary': [
    'all its measured animals are of one age',
    'look at the ages of their horizons, or measure an animal of another age',
  ],
  'no-scatter': [
    'all its measured values are the same',
    'look for a value that was entered more than once, or measure more animals',
  ],
};

function isRefusal(reason: string): reason is keyof typeof refusals {
  return reason in refusals;
}
