import {
  angleDegrees,
  findAxis,
  polylineMm,
  projectedMm,
  type Point,
} from '../../../analysis/traits/index.ts';
import type { Repeat } from '../resolve/landmark-sheet.ts';
import { landmarksOf, type SchemeIndex } from '../resolve/scheme-index.ts';
import type { Axis, Measurement } from '../schema/index.ts';

/** One digitised specimen as measurements see it: landmark to place in mm, without the points that may not be used. */
export type UsablePoints = ReadonlyMap<string, Point>;

/** Points of a repeat in mm, without those that are lost, excluded, or on filler that is not taken. */
export function usablePoints(repeat: Repeat, mmPerUnit: number, excluded: ReadonlySet<string>): UsablePoints {
  const points = new Map<string, Point>();
  for (const [landmark, { at }] of repeat) {
    if (!excluded.has(landmark))
      points.set(
        landmark,
        at.map((coordinate) => coordinate * mmPerUnit),
      );
  }
  return points;
}

/**
 * A measurement from digitised points, in mm or degrees: straight, along a curve, along an axis (signed), or an angle.
 * Undefined where a point or every axis is missing, where points of an axis coincide, and for callipers only.
 */
export function measureFrom(
  measurement: Measurement,
  points: UsablePoints,
  scheme: SchemeIndex,
): number | undefined {
  const path = landmarksOf(measurement).map((landmark) => points.get(landmark));
  if (path.length === 0 || path.some((point) => point === undefined)) return undefined;
  const known = path as Point[]; // all were found
  if (known.some((point) => point.length !== known[0]!.length)) return undefined;
  if (measurement.angle) return finite(angleDegrees(known[0]!, known[1]!, known[2]!));
  if (measurement.along === undefined) return polylineMm(known);
  const axis = scheme.axes.get(measurement.along);
  const direction = axis && findDirection(axis, points);
  return direction?.length === known[0]!.length
    ? projectedMm(known[0]!, known.at(-1)!, direction)
    : undefined;
}

/** Direction of an axis on one specimen; undefined where no two of its landmarks are preserved, or none lie apart. */
export function findDirection(axis: Axis, points: UsablePoints): Point | undefined {
  const flat = ![...points.values()].some((point) => point.length !== 2);
  const choices = [{ from: axis.from, to: axis.to, turned: 0 }, ...(axis.else ?? [])].filter((choice) =>
    canServe(choice, points, flat),
  );
  const [first, ...others] = choices;
  if (!first) return undefined;
  // The engine takes the first choice as the main axis; a substitute that stands first keeps its angle as one of the others.
  const turned = first.turned ?? 0;
  const definition = turned === 0 ? { ...first, else: others } : { from: '', to: '', else: choices };
  return findAxis(definition, points)?.direction;
}

function canServe(
  { from, to, turned = 0 }: { from: string; to: string; turned?: number | undefined },
  points: UsablePoints,
  flat: boolean,
): boolean {
  const [start, end] = [points.get(from), points.get(to)];
  if (!start || !end || start.length !== end.length || (turned !== 0 && !flat)) return false;
  return start.some((coordinate, index) => coordinate !== end[index]);
}

function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}
