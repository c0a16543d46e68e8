import type { AnalysedLineage, AnalysedTrait } from '../analyse/lineage.ts';
import { fromScale, type TraitScale } from '../../../analysis/traits/index.ts';
import { askRelatives } from '../analyse/status.ts';
import type { TaxonObservation } from '../analyse/observe-trait.ts';
import type { CompiledValue, Interval } from '../contract.ts';
import type { Taxon } from '../schema/index.ts';
import { strongest } from '../analyse/limits.ts';
import { boundedNumbers, composeLimit } from './compose-limit.ts';
import { facetsOf } from './facets.ts';

/** Relatives with less than this share of an estimate are not named one by one. */
const smallestShare = 0.01;

/** The value of one taxon for one trait: exactly one status, and the numbers that it may print. */
export function composeValue(
  taxon: Taxon,
  analysedTrait: AnalysedTrait,
  analysed: AnalysedLineage,
): CompiledValue {
  const observation = analysedTrait.observed.taxa.get(taxon.id)!;
  const shared = {
    taxon: taxon.id,
    level: 0.95,
    n: observation.counted.length,
    specimens: observation.counted.map(({ specimen }) => specimen.record.value.id),
    leftOut: observation.leftOut.map(composeLeftOut),
    facets: facetsOf(taxon, observation),
    placedMa: analysedTrait.placedMa.get(taxon.id) ?? null,
  };
  const limit = strongest(analysedTrait.limits.get(taxon.id) ?? []);
  const limits = limit ? { limits: composeLimit(limit, analysedTrait.observed.kind) } : {};
  if (observation.mean) {
    return { ...shared, ...measuredNumbers(observation.mean, analysedTrait.observed.scale), ...limits };
  }
  if (limit) {
    return { ...shared, ...boundedNumbers(limit), ...limits, ...conditionalOf(taxon.id, analysedTrait) };
  }
  const reference = analysed.trees.find((tree) => tree.reference);
  const relatives = askRelatives(analysedTrait.answer, taxon.id, reference?.taxa.has(taxon.id) ?? false);
  if ('unknown' in relatives) return { ...shared, ...nothingKnown, reason: relatives.unknown };
  return { ...shared, ...inferredNumbers(relatives.inferred, analysedTrait) };
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
    interval: mean.interval ? back(mean.interval, scale) : ([null, null] as Interval),
    method: 'mean-pooled-spread',
    df: Number.isFinite(mean.df) ? mean.df : null,
    standardError: mean.standardError,
  } as const;
}

type Inferred = Extract<ReturnType<typeof askRelatives>, { inferred: unknown }>['inferred'];

function inferredNumbers(estimate: Inferred, { observed, answer }: AnalysedTrait) {
  const relatives = estimate.relatives ?? [];
  const named = relatives.filter(({ weight }) => weight >= smallestShare);
  return {
    status: 'inferred',
    estimate: fromScale(observed.scale, estimate.median),
    interval: back(estimate.interval, observed.scale),
    method:
      answer?.estimated && answer.model.name === 'trend'
        ? 'trend-rate-integrated'
        : 'brownian-rate-integrated',
    df: answer?.estimated ? answer.model.degreesOfFreedom : null,
    standardError: estimate.standardDeviation,
    relatives: named.map(({ taxon, weight }) => ({ taxon, weight })),
    othersWeight:
      relatives.reduce((sum, { weight }) => sum + weight, 0) -
      named.reduce((sum, { weight }) => sum + weight, 0),
  } as const;
}

function back([low, high]: readonly [number, number], scale: TraitScale): Interval {
  return [fromScale(scale, low), fromScale(scale, high)];
}

/** What relatives and the limit together say of a bounded taxon; nothing where no tree speaks of it, or sampling did not settle. */
function conditionalOf(
  taxon: string,
  { answer, observed }: AnalysedTrait,
): Pick<CompiledValue, 'conditional'> {
  if (!answer?.estimated || !answer.limits.reported) return {};
  const node = answer.nodes.find(({ label }) => label === taxon);
  if (!node) return {};
  return {
    conditional: {
      median: fromScale(observed.scale, node.median),
      interval: back(node.interval, observed.scale),
    },
  };
}
