import { fromScale } from '../../../analysis/traits/index.ts';
import type { AnalysedLineage, AnalysedTrait } from '../analyse/lineage.ts';
import { strongest } from '../analyse/limits.ts';
import type { SizeSeries, TraitSize } from '../analyse/size.ts';
import type { CompiledSize } from '../contract-size.ts';
import type { Texts } from '../contract.ts';
import { intervalFromScale } from './compose-relatives.ts';

type Series = CompiledSize['trait'];

/** A trait against size as the pages read it: points in their unit, slopes on their scale, and what may be said. */
export function composeSize(
  size: TraitSize,
  { observed }: AnalysedTrait,
  analysed: AnalysedLineage,
): CompiledSize {
  const { slope } = size.trait;
  const told = typeof slope !== 'string' && slope.pValue <= 0.05;
  const nameOf = (id: string): Texts => analysed.lineage.scheme.measurements.get(id)?.name ?? { en: id };
  const reason = typeof slope === 'string' ? slope : told ? undefined : 'not-clear';
  return {
    measurement: size.measurement,
    label: nameOf(size.measurement),
    verdict: told ? (slope.median > 0 ? 'larger' : 'smaller') : 'cannot-tell',
    ...(reason ? { reason } : {}),
    trait: composeSeries(size.trait, size.sizes, observed.trait.label),
    parts: size.parts.map((part) => ({
      ...composeSeries(part, size.sizes, nameOf(part.measurement!)),
      measurement: part.measurement!,
      pace: paceOf(part.slope),
    })),
    sizeless: [...observed.taxa].flatMap(([taxon, { mean }]) =>
      mean && !size.sizes.has(taxon) ? taxon : [],
    ),
  };
}

/** A length that grows as size does has a slope of 1 on log scale. */
function paceOf(slope: SizeSeries['slope']): CompiledSize['parts'][number]['pace'] {
  if (typeof slope === 'string') return 'cannot-tell';
  if (slope.interval[0] > 1) return 'faster';
  return slope.interval[1] < 1 ? 'slower' : 'cannot-tell';
}

function composeSeries(series: SizeSeries, sizes: ReadonlyMap<string, number>, label: Texts): Series {
  const { slope, observed } = series;
  const { scale } = observed;
  const told =
    typeof slope === 'string'
      ? { reason: slope }
      : {
          slope: {
            perLog: slope.median,
            interval: [...slope.interval] as [number, number],
            pValue: slope.pValue,
            df: slope.degreesOfFreedom,
          },
        };
  const line = typeof slope === 'string' ? [] : slope.line;
  return {
    label,
    ...told,
    points: pointsOf(series, sizes),
    line: line.map(({ at, median, interval }) => ({
      sizeMm: Math.exp(at),
      median: fromScale(scale, median),
      interval: [fromScale(scale, interval[0]), fromScale(scale, interval[1])],
    })),
  };
}

function pointsOf({ observed, limits }: SizeSeries, sizes: ReadonlyMap<string, number>): Series['points'] {
  return [...sizes].flatMap(([taxon, logSize]): Series['points'] => {
    const start = { taxon, sizeMm: Math.exp(logSize) };
    const mean = observed.taxa.get(taxon)?.mean;
    if (mean) {
      const interval = mean.interval
        ? intervalFromScale(observed.scale, mean.interval)
        : ([null, null] as [null, null]);
      return [{ ...start, estimate: fromScale(observed.scale, mean.mean), interval }];
    }
    const limit = strongest(limits.get(taxon) ?? [])?.limit;
    if (!limit) return [];
    const { atLeast, atMost } = limit;
    return [
      {
        ...start,
        estimate: null,
        interval: [atLeast ?? null, atMost ?? null],
        ...(atLeast === undefined ? {} : { atLeast }),
        ...(atMost === undefined ? {} : { atMost }),
      },
    ];
  });
}
