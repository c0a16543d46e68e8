import { directionBetween, type Point } from './point.ts';

/** An axis by two landmarks, with others to fall back on, best first. */
export interface AxisDefinition {
  readonly from: string;
  readonly to: string;
  readonly else?: readonly {
    readonly from: string;
    readonly to: string;
    /** Mean angle from the main axis to this one, degrees, clockwise in a picture whose y runs down. */
    readonly turned?: number | undefined;
  }[];
}

/** The direction found for an axis. */
export interface FoundAxis {
  /** Vector of length 1. */
  readonly direction: readonly number[];
  /** 0 for the main axis, 1 for the first fallback and so on. */
  readonly choice: number;
  readonly from: string;
  readonly to: string;
}

/**
 * Direction of an axis from the landmarks that are preserved: the main one, or the first fallback whose two are
 * there, turned back by its mean angle. Undefined where none is. Throws for a turned fallback in three dimensions.
 */
export function findAxis(axis: AxisDefinition, landmarks: ReadonlyMap<string, Point>): FoundAxis | undefined {
  const choices = [{ from: axis.from, to: axis.to, turned: 0 }, ...(axis.else ?? [])];
  for (const [choice, { from, to, turned = 0 }] of choices.entries()) {
    const start = landmarks.get(from);
    const end = landmarks.get(to);
    if (!start || !end) continue;
    const direction = directionBetween(start, end);
    return { direction: turned === 0 ? direction : turnDirection(direction, -turned), choice, from, to };
  }
  return undefined;
}

/** Direction turned by degrees, clockwise in a picture whose y runs down. Throws outside two dimensions. */
export function turnDirection(direction: Point, degrees: number): number[] {
  if (direction.length !== 2)
    throw new Error(`only a direction in two dimensions can be turned, got ${direction.length}`);
  const angle = (degrees * Math.PI) / 180;
  const [x, y] = [direction[0]!, direction[1]!];
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
}

/**
 * The directions at a given angle from a direction: both sides in two dimensions, a ring in three. A ratio of two
 * projected lengths is largest and smallest among these, never inside the angle.
 */
export function directionsWithin(direction: Point, degrees: number): readonly Point[] {
  if (degrees === 0) return [direction];
  if (direction.length === 2) return [turnDirection(direction, degrees), turnDirection(direction, -degrees)];
  const angle = (degrees * Math.PI) / 180;
  const [side, other] = crossDirections(direction);
  return Array.from({ length: 72 }, (_, step) => {
    const around = (step * Math.PI) / 36;
    return direction.map(
      (part, axis) =>
        part * Math.cos(angle) +
        Math.sin(angle) * (side[axis]! * Math.cos(around) + other[axis]! * Math.sin(around)),
    );
  });
}

/** Two directions at right angles to a direction in space and to each other. */
function crossDirections(direction: Point): readonly [Point, Point] {
  const [x, y, z] = [direction[0]!, direction[1]!, direction[2]!];
  const helper = Math.abs(x) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const side = directionBetween(
    [0, 0, 0],
    [y * helper[2]! - z * helper[1]!, z * helper[0]! - x * helper[2]!, x * helper[1]! - y * helper[0]!],
  );
  const other = [y * side[2]! - z * side[1]!, z * side[0]! - x * side[2]!, x * side[1]! - y * side[0]!];
  return [side, other];
}
