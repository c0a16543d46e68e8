import { sideOf } from '../../../analysis/trend/index.ts';
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
  const side = sideOf(slopesOf(size.trait), 0);
  const reason = side === 'cannot-tell' ? reasonOf(size.trait) : undefined;
  const nameOf = (id: string): Texts => analysed.lineage.scheme.measurements.get(id)?.name ?? { en: id };
  return {
    measurement: size.measurement,
    label: nameOf(size.measurement),
    verdict: ({ above: 'larger', below: 'smaller', 'cannot-tell': 'cannot-tell' } as const)[side],
    ...(reason ? { reason } : {}),
    trait: composeSeries(size.trait, size.sizes, observed.trait.label),
    parts: size.parts.map((part) => ({
      ...composeSeries(part, size.sizes, nameOf(part.measurement!)),
      measurement: part.measurement!,
      pace: paceOf(part),
    })),
    sizeless: [...observed.taxa].flatMap(([taxon, { mean }]) =>
      mean && !size.sizes.has(taxon) ? taxon : [],
    ),
  };
}

/** Slopes of every row, as of a trend: a rule that cannot date a tree says nothing of it. Without a row, why there is none. */
function slopesOf({ slope, rows }: SizeSeries): SizeSeries['rows'][number]['slope'][] {
  const others = rows.slice(1).flatMap((row) => (row.slope === 'not-dated' ? [] : [row.slope]));
  return [slope, ...others];
}

function reasonOf({ slope }: SizeSeries): string {
  if (typeof slope === 'string') return slope;
  return slope.interval[0] > 0 || slope.interval[1] < 0 ? 'trees-disagree' : 'not-clear';
}

/** A length that grows as size does has a slope of 1 on log scale. */
function paceOf(part: SizeSeries): CompiledSize['parts'][number]['pace'] {
  return ({ above: 'faster', below: 'slower', 'cannot-tell': 'cannot-tell' } as const)[
    sideOf(slopesOf(part), 1)
  ];
}

function composeSeries(series: SizeSeries, sizes: ReadonlyMap<string, number>, label: Texts): Series {
  const { slope, observed } = series;
  const { scale } = observed;
  const line = typeof slope === 'string' ? [] : slope.line;
  return {
    label,
    ...composeSlope(slope),
    rows: series.rows.map(({ tree, rule, slope: own }) => ({ tree, dating: rule, ...composeSlope(own) })),
    points: pointsOf(series, sizes),
    line: line.map(({ at, median, interval }) => ({
      sizeMm: Math.exp(at),
      median: fromScale(scale, median),
      interval: [fromScale(scale, interval[0]), fromScale(scale, interval[1])],
    })),
  };
}

function composeSlope(slope: SizeSeries['rows'][number]['slope']): Pick<Series, 'slope' | 'reason'> {
  if (typeof slope === 'string') return { reason: slope };
  const { median, interval, pValue, degreesOfFreedom } = slope;
  return { slope: { perLog: median, interval: [...interval], pValue, df: degreesOfFreedom } };
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
