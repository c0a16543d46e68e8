import type { CompiledValue, Interval } from '../../scripts/compile/contract.ts';

/** What relatives say of an animal, as a value that the one exit of values can print. */
export function relativesValue({
  taxon,
  median,
  interval,
}: {
  taxon: string;
  median: number;
  interval: Readonly<Interval>;
}): CompiledValue {
  return {
    taxon,
    status: 'inferred',
    estimate: median,
    interval: [interval[0], interval[1]],
    level: 0.95,
    method: 'rate-integrated',
    df: null,
    standardError: null,
    n: 0,
    specimens: [],
    leftOut: [],
    facets: [],
    placedMa: null,
  };
}
