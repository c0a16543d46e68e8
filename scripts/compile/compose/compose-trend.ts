import type { LinePoint } from '../../../analysis/estimate/index.ts';
import { fromScale, type TraitScale } from '../../../analysis/traits/index.ts';
import type { PairRate } from '../analyse/rates.ts';
import type { TraitTrend, TrendRow } from '../analyse/trend.ts';
import type { CompiledRates, CompiledTrend } from '../contract-trend.ts';

/** A trend as the pages read it: slopes on the trait's scale, the line in its unit. */
export function composeTrend(found: TraitTrend, scale: TraitScale): CompiledTrend {
  const { verdict, reason, rows, lineAgesMa, rank, taxa } = found;
  const reference = rows[0]?.slope;
  const line = reference === undefined || typeof reference === 'string' ? [] : reference.line;
  return {
    verdict,
    ...(reason ? { reason } : {}),
    level: 0.95,
    taxa,
    rows: rows.map(composeRow),
    line: line.map((point, index) => ({ ...composeLinePoint(point, scale), at: lineAgesMa[index]! })),
    ...(rank ? { rank } : {}),
  };
}

function composeRow({ tree, rule, slope, signs }: TrendRow): CompiledTrend['rows'][number] {
  const { datings: sets, rising, falling, range } = signs;
  const told =
    typeof slope === 'string'
      ? { reason: slope }
      : {
          slope: {
            perMyr: slope.median,
            interval: [...slope.interval] as [number, number],
            pValue: slope.pValue,
            df: slope.degreesOfFreedom,
          },
        };
  return {
    tree,
    dating: rule,
    ...told,
    ages: { sets, rising, falling, perMyr: sets > 0 ? [...range] : [null, null] },
  };
}

/** A point of a fitted line in the unit of the trait. */
export function composeLinePoint({ at, median, interval }: LinePoint, scale: TraitScale) {
  const ends: [number, number] = [fromScale(scale, interval[0]), fromScale(scale, interval[1])];
  return { at, median: fromScale(scale, median), interval: ends };
}

/** Rates as the pages read them, the shortest time first. */
export function composeRates(found: readonly PairRate[]): CompiledRates {
  return {
    pairs: found
      .map(({ pair: { one, other, pathMyr }, change }) => ({
        one,
        other,
        pathMyr,
        darwins: change.rate,
        standardError: change.standardError,
      }))
      .sort((a, b) => a.pathMyr - b.pathMyr || (a.one < b.one ? -1 : 1)),
  };
}
