import type { AnalysedTrait } from '../analyse/lineage.ts';
import { fromScale, type TraitScale } from '../../../analysis/traits/index.ts';
import { statusOfTaxon } from '../analyse/status.ts';
import type { TaxonObservation } from '../analyse/observe-trait.ts';
import type { CompiledValue, Interval } from '../contract.ts';
import type { Taxon } from '../schema/index.ts';
import { strongest } from '../analyse/limits.ts';
import { boundedNumbers, composeLimit } from './compose-limit.ts';
import { conditionalOf, inferredNumbers, intervalFromScale } from './compose-relatives.ts';
import { facetsOf } from './facets.ts';

/** The value of one taxon for one trait: exactly one status, and the numbers that it may print. */
export function composeValue(taxon: Taxon, analysedTrait: AnalysedTrait): CompiledValue {
  const observation = analysedTrait.observed.taxa.get(taxon.id)!;
  const shared = {
    taxon: taxon.id,
    level: 0.95,
    n: observation.counted.length,
    specimens: observation.counted.map(({ specimen }) => specimen.record.value.id),
    leftOut: observation.leftOut.map(composeLeftOut),
    facets: facetsOf(taxon, observation, analysedTrait.observed.spread !== undefined),
    placedMa: analysedTrait.placedMa.get(taxon.id) ?? null,
  };
  const limit = strongest(analysedTrait.limits.get(taxon.id) ?? []);
  const limits = limit ? { limits: composeLimit(limit, analysedTrait) } : {};
  const { status, reason, fromRelatives } = statusOfTaxon(taxon.id, analysedTrait);
  const { mean } = observation;
  if (status === 'measured' && mean)
    return { ...shared, ...measuredNumbers(mean, analysedTrait.observed.scale), ...limits };
  if (status === 'bounded' && limit) {
    const conditional = fromRelatives ? conditionalOf(fromRelatives, analysedTrait) : {};
    return { ...shared, ...boundedNumbers(limit), ...limits, ...conditional };
  }
  if (status === 'inferred' && fromRelatives)
    return { ...shared, ...inferredNumbers(fromRelatives, analysedTrait) };
  return { ...shared, ...nothingKnown, reason: reason ?? 'not-estimated' };
}

/** The reason as a code, and the author's own words where they left the specimen out by hand, or say what ailed it. */
function composeLeftOut({
  specimen,
  reason,
}: TaxonObservation['leftOut'][number]): CompiledValue['leftOut'][number] {
  const { id, leftOut, pathology } = specimen.record.value;
  const text = reason === 'author' ? leftOut : reason === 'sick' ? pathology : undefined;
  return { specimen: id, reason, ...(text ? { text } : {}) };
}

const nothingKnown = {
  status: 'unknown',
  estimate: null,
  interval: [null, null] as Interval,
  method: 'none',
  df: null,
  standardError: null,
} as const;

type Mean = NonNullable<ReturnType<AnalysedTrait['observed']['taxa']['get']>>['mean'] & object;

function measuredNumbers(mean: Mean, scale: TraitScale) {
  return {
    status: 'measured',
    estimate: fromScale(scale, mean.mean),
    interval: mean.interval ? intervalFromScale(scale, mean.interval) : ([null, null] as Interval),
    method: 'mean-pooled-spread',
    df: Number.isFinite(mean.df) ? mean.df : null,
    standardError: mean.standardError,
  } as const;
}
