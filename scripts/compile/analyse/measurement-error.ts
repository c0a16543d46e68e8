import type { Trait } from '../schema/index.ts';
import { propagate, type SpecimenValue } from './specimen-values.ts';
import type { TraitKind } from './trait-kind.ts';

/** Sum of squares of repeats about the mean of their specimen, with its degrees of freedom. */
interface Pool {
  squares: number;
  df: number;
}

/**
 * Standard error of each specimen's value from its repeats: the within-specimen mean square, pooled over specimens
 * that were repeated in the same way, over the number of repeats of this one (one-way analysis of variance).
 * Null where nothing was repeated. Landmarks pool on the trait, callipers on each measurement.
 */
export function readingErrors(
  trait: Trait,
  kind: TraitKind,
  values: readonly SpecimenValue[],
): Map<SpecimenValue, number | null> {
  const pools = new Map<string, Pool>();
  for (const value of values) {
    value.repeats.forEach((repeats, index) => pool(pools, `${value.from} ${index}`, repeats));
  }
  return new Map(values.map((value) => [value, errorOf(trait, kind, value, pools)]));
}

function pool(pools: Map<string, Pool>, key: string, repeats: readonly number[]): void {
  const mean = repeats.reduce((sum, repeat) => sum + repeat, 0) / repeats.length;
  const own = pools.get(key) ?? { squares: 0, df: 0 };
  own.squares += repeats.reduce((sum, repeat) => sum + (repeat - mean) ** 2, 0);
  own.df += repeats.length - 1;
  pools.set(key, own);
}

function errorOf(
  trait: Trait,
  kind: TraitKind,
  value: SpecimenValue,
  pools: ReadonlyMap<string, Pool>,
): number | null {
  const errors = value.repeats.map((repeats, index) => {
    const own = pools.get(`${value.from} ${index}`)!;
    return own.df > 0 ? Math.sqrt(own.squares / own.df / repeats.length) : null;
  });
  if (errors.some((error) => error === null)) return value.approximate ? value.approximateSd : null;
  const known = errors as number[]; // none is null
  const direct = value.from === 'landmarks' ? known[0]! : propagate(trait, kind, value.means, known);
  return Math.hypot(direct, value.approximateSd);
}
