import type { SpecimenLimit } from '../analyse/limits.ts';
import type { AnalysedTrait } from '../analyse/lineage.ts';
import type { CompiledValue, Interval } from '../contract.ts';

/** The numbers of a value that only a broken specimen speaks of: an open interval and no estimate. */
export function boundedNumbers({ limit }: SpecimenLimit) {
  return {
    status: 'bounded',
    estimate: null,
    interval: [limit.atLeast ?? null, limit.atMost ?? null] as Interval,
    method: 'limit-of-broken',
    df: null,
    standardError: null,
  } as const;
}

/** A limit with its working: what is preserved, and what it would read with more restored. */
export function composeLimit(
  { specimen, limit, preservedMm, rows }: SpecimenLimit,
  { observed: { kind }, answer }: AnalysedTrait,
): NonNullable<CompiledValue['limits']> {
  const [first, second] = kind.measurements.map((measurement, index) => ({
    measurement,
    mm: preservedMm[index]!,
  }));
  return {
    ...(limit.atLeast === undefined ? {} : { atLeast: limit.atLeast }),
    ...(limit.atMost === undefined ? {} : { atMost: limit.atMost }),
    bare: limit.bare,
    ...(limit.asymptote === undefined ? {} : { asymptote: limit.asymptote }),
    specimen: specimen.record.value.id,
    ...probabilityOf(specimen.record.value.id, answer),
    working: { ...(first ? { part: first } : {}), ...(second ? { whole: second } : {}), rows },
  };
}

/** How probable relatives find the limit of a specimen; nothing where no tree speaks of its taxon. */
function probabilityOf(specimen: string, answer: AnalysedTrait['answer']): { probability?: number } {
  const known = answer?.estimated
    ? answer.limits.probabilities.find((each) => each.specimen === specimen)
    : undefined;
  return known ? { probability: known.probability } : {};
}
