import type { Repeat } from '../resolve/landmark-sheet.ts';
import { landmarksOf, type SchemeIndex } from '../resolve/scheme-index.ts';
import type { Axis, Measurement } from '../schema/index.ts';

/** One digitised skull as the measurements see it: landmark to coordinates in mm, without the points that may not be used. */
export type UsablePoints = ReadonlyMap<string, readonly number[]>;

/** Points of a repeat in mm, without those that are lost, excluded or on filler that is not taken. */
export function usablePoints(repeat: Repeat, mmPerUnit: number, excluded: ReadonlySet<string>): UsablePoints {
  const points = new Map<string, number[]>();
  for (const [landmark, { at }] of repeat) {
    if (!excluded.has(landmark))
      points.set(
        landmark,
        at.map((coordinate) => coordinate * mmPerUnit),
      );
  }
  return points;
}

/** The landmarks that a measurement needs besides its axis and that are not usable. */
export function missingFor(measurement: Measurement, points: UsablePoints): string[] {
  return landmarksOf(measurement).filter((landmark) => !points.has(landmark));
}

/**
 * A measurement from digitised points, in mm or degrees: straight, along a curve, along an axis (signed), or an angle.
 * Undefined where a point or every axis is missing, or where it is taken by callipers only.
 */
export function measureFrom(
  measurement: Measurement,
  points: UsablePoints,
  scheme: SchemeIndex,
): number | undefined {
  const path = landmarksOf(measurement).map((landmark) => points.get(landmark));
  if (path.length === 0 || path.some((point) => point === undefined)) return undefined;
  const known = path as (readonly number[])[]; // all were found
  if (measurement.angle) return angleAt(known[0]!, known[1]!, known[2]!);
  if (measurement.along === undefined) return curveLength(known);
  const axis = scheme.axes.get(measurement.along);
  const direction = axis && axisDirection(axis, points);
  return direction && dot(difference(known.at(-1)!, known[0]!), direction);
}

/**
 * Unit direction of an axis on one skull: by its own two landmarks, else by the first substitute that survives,
 * turned back by its mean angle (clockwise in a picture whose y runs down). A turned substitute serves in two dimensions only.
 */
export function axisDirection(axis: Axis, points: UsablePoints): number[] | undefined {
  const main = unitVector(points.get(axis.from), points.get(axis.to));
  if (main) return main;
  for (const other of axis.else ?? []) {
    const direction = unitVector(points.get(other.from), points.get(other.to));
    if (!direction) continue;
    if (other.turned === undefined || other.turned === 0) return direction;
    if (direction.length === 2) return turnedBack(direction, other.turned);
  }
  return undefined;
}

/** Angle from one direction to another in degrees, clockwise in a picture whose y runs down; two dimensions only. */
export function clockwiseDegrees(from: readonly number[], to: readonly number[]): number {
  const cross = from[0]! * to[1]! - from[1]! * to[0]!;
  return (Math.atan2(cross, dot(from, to)) * 180) / Math.PI;
}

/** Unit vector between two points; undefined when one is missing or both are the same. */
export function unitVector(
  from: readonly number[] | undefined,
  to: readonly number[] | undefined,
): number[] | undefined {
  if (!from || !to) return undefined;
  const way = difference(to, from);
  const length = Math.hypot(...way);
  return length > 0 ? way.map((coordinate) => coordinate / length) : undefined;
}

function turnedBack([x = 0, y = 0]: readonly number[], degrees: number): number[] {
  const radians = (-degrees * Math.PI) / 180;
  return [x * Math.cos(radians) - y * Math.sin(radians), x * Math.sin(radians) + y * Math.cos(radians)];
}

function curveLength(path: readonly (readonly number[])[]): number {
  let length = 0;
  for (let index = 1; index < path.length; index++)
    length += Math.hypot(...difference(path[index]!, path[index - 1]!));
  return length;
}

/** By the tangent, which keeps its digits near 0 and 180 degrees where the arc cosine loses them. */
function angleAt(one: readonly number[], vertex: readonly number[], other: readonly number[]): number {
  const first = difference(one, vertex);
  const second = difference(other, vertex);
  const along = dot(first, second);
  const across = Math.sqrt(Math.max(0, dot(first, first) * dot(second, second) - along * along));
  return (Math.atan2(across, along) * 180) / Math.PI;
}

function difference(to: readonly number[], from: readonly number[]): number[] {
  return to.map((coordinate, index) => coordinate - (from[index] ?? 0));
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, coordinate, index) => sum + coordinate * (other[index] ?? 0), 0);
}
