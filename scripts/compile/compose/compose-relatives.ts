import type { NodeEstimate } from '../../../analysis/estimate/index.ts';
import { fromScale, type TraitScale } from '../../../analysis/traits/index.ts';
import type { AnalysedTrait } from '../analyse/lineage.ts';
import type { CompiledValue, Interval } from '../contract.ts';

/** Relatives with less than this share of an estimate are not named one by one. */
const smallestShare = 0.01;

/** The numbers of a value that is worked out from relatives: median, interval, their shares, and the span. */
export function inferredNumbers(estimate: NodeEstimate, trait: AnalysedTrait) {
  const { observed, answer } = trait;
  const relatives = estimate.relatives ?? [];
  const named = relatives.filter(({ weight }) => weight >= smallestShare);
  const shares = (of: typeof relatives) => of.reduce((sum, { weight }) => sum + weight, 0);
  return {
    status: 'inferred',
    estimate: fromScale(observed.scale, estimate.median),
    interval: intervalFromScale(observed.scale, estimate.interval),
    method:
      answer?.estimated && answer.model.name === 'trend'
        ? 'trend-rate-integrated'
        : 'brownian-rate-integrated',
    df: answer?.estimated ? answer.model.degreesOfFreedom : null,
    standardError: estimate.standardDeviation,
    relatives: named.map(({ taxon, weight }) => ({ taxon, weight })),
    othersWeight: shares(relatives) - shares(named),
    ...spanOfValue(estimate.label, trait),
  } as const;
}

/** What relatives and the limit together say of a bounded taxon; nothing where sampling did not settle. */
export function conditionalOf(
  estimate: NodeEstimate,
  trait: AnalysedTrait,
): Pick<CompiledValue, 'conditional' | 'span'> {
  const { answer, observed } = trait;
  if (!answer?.estimated || !answer.limits.reported) return {};
  return {
    conditional: {
      median: fromScale(observed.scale, estimate.median),
      interval: intervalFromScale(observed.scale, estimate.interval),
    },
    ...spanOfValue(estimate.label, trait),
  };
}

/** The range of the same value over other trees, datings and ages. */
function spanOfValue(taxon: string, { span, observed }: AnalysedTrait): Pick<CompiledValue, 'span'> {
  const own = span?.spans.get(taxon);
  if (!span || !own) return {};
  return {
    span: {
      middle: intervalFromScale(observed.scale, own.middle),
      interval: intervalFromScale(observed.scale, own.interval),
      over: { trees: span.trees, rules: span.rules, ageSets: span.ageSets },
    },
  };
}

/** Ends of an interval back in the trait's unit. */
export function intervalFromScale(scale: TraitScale, [low, high]: readonly [number, number]): Interval {
  return [fromScale(scale, low), fromScale(scale, high)];
}
