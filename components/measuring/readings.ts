import {
  angleDegrees,
  findAxis,
  findRepeatComponents,
  geometricMean,
  polylineMm,
  projectedMm,
  type Point,
} from '../../analysis/traits/index.ts';
import { mmPerPx, type Measured, type Round } from './bench-record.ts';
import type { BenchMeasurement, BenchScheme, BenchTrait } from './bench-scheme.ts';

/** One measurement or trait of the specimen on the bench, round by round, with what the repeats say of it. */
export interface BenchReading {
  readonly id: string;
  readonly name: string;
  readonly unit: string;
  readonly isTrait: boolean;
  /** One a round, in the unit; undefined where a point is missing. */
  readonly byRound: readonly (number | undefined)[];
  readonly mean: number | undefined;
  readonly error: ReadingError | undefined;
}

/** What repeated readings say of how well a thing is measured. */
export interface ReadingError {
  /** Standard deviation of one reading among repeats, in the unit: the technical error of measurement. */
  readonly technical: number;
  /** The same in percent of the mean; NaN where the mean is 0. */
  readonly relativePercent: number;
  /** Share of the variance that lies within specimens, %; undefined until two specimens were measured. */
  readonly sharePercent: number | undefined;
  readonly specimens: number;
}

/** All readings of the specimen in hand; the finished specimens of the same scheme take part in the error only. */
export function readingsOf(
  now: Measured,
  finished: readonly Measured[],
  scheme: BenchScheme,
): BenchReading[] {
  const others = finished.filter(({ specimen }) => specimen !== now.specimen);
  const readingOf = (
    fields: Pick<BenchReading, 'id' | 'name' | 'unit' | 'isTrait'>,
    read: (points: ReadonlyMap<string, Point>) => number | undefined,
  ): BenchReading => {
    const byRound = pointsOf(now).map(read);
    const own = byRound.filter((value) => value !== undefined);
    const before = others.map((each) =>
      pointsOf(each)
        .map(read)
        .filter((value) => value !== undefined),
    );
    return { ...fields, byRound, mean: meanOf(own), error: errorOf(own, before) };
  };
  return [
    ...scheme.traits.map((trait) =>
      readingOf({ id: trait.id, name: trait.label, unit: trait.unit, isTrait: true }, (points) =>
        traitValue(trait, scheme, points),
      ),
    ),
    ...scheme.measurements.map((each) =>
      readingOf(
        { id: each.id, name: each.name, unit: each.angle ? 'degrees' : 'mm', isTrait: false },
        (points) => measurementValue(each, scheme, points),
      ),
    ),
  ];
}

/**
 * Technical error from repeats, pooled over specimens (for two rounds it is Dahlberg's √(Σd²/2n)), and the share of variance
 * within specimens after Bailey and Byrnes 1990. Undefined without a repeat of the specimen in hand.
 */
function errorOf(own: readonly number[], others: readonly (readonly number[])[]): ReadingError | undefined {
  if (own.length < 2) return undefined;
  const groups = [own, ...others].filter((readings) => readings.length > 0);
  const components = findRepeatComponents(groups)!;
  const technical = Math.sqrt(components.within);
  return {
    technical,
    relativePercent: (100 * technical) / Math.abs(meanOf(own)!),
    sharePercent: groups.length > 1 ? components.percentError : undefined,
    specimens: groups.length,
  };
}

function pointsOf(measured: Measured): ReadonlyMap<string, Point>[] {
  const scale = mmPerPx(measured);
  if (scale === undefined) return [];
  return measured.rounds.map(
    (round: Round) => new Map(Object.entries(round).map(([id, [x, y]]) => [id, [x * scale, y * scale]])),
  );
}

function measurementValue(
  { from, to, along, through = [], angle }: BenchMeasurement,
  { axes }: BenchScheme,
  points: ReadonlyMap<string, Point>,
): number | undefined {
  const path = (angle ?? [from!, ...through, to!]).map((id) => points.get(id));
  if (path.some((point) => point === undefined)) return undefined;
  const known = path as Point[]; // all were found
  if (angle) return finite(angleDegrees(known[0]!, known[1]!, known[2]!));
  if (along === undefined) return polylineMm(known);
  const axis = axes.find(({ id }) => id === along);
  const direction = axis && directionOf(axis, points);
  return direction && projectedMm(known[0]!, known.at(-1)!, direction);
}

/** Direction of an axis of which two points coincide is not there. */
function directionOf(
  axis: Parameters<typeof findAxis>[0],
  points: ReadonlyMap<string, Point>,
): Point | undefined {
  try {
    return findAxis(axis, points)?.direction;
  } catch {
    return undefined;
  }
}

function traitValue(
  { kind, measurements, times }: BenchTrait,
  scheme: BenchScheme,
  points: ReadonlyMap<string, Point>,
): number | undefined {
  const values = measurements.map((id) => {
    const measurement = scheme.measurements.find((each) => each.id === id);
    return measurement && measurementValue(measurement, scheme, points);
  });
  if (values.some((value) => value === undefined)) return undefined;
  const [first, second] = values as number[];
  if (kind === 'ratio') return second! > 0 ? (first! / second!) * times : undefined;
  if (kind !== 'size') return first;
  return (values as number[]).every((value) => value > 0) ? geometricMean(values as number[]) : undefined;
}

function meanOf(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}
