import type { PlanePoint } from '../../../analysis/geometry/plane.ts';

/** The measured line of a trait that is a share of it: its landmarks, and the axis that it is read along. */
export interface MeasuredFrame {
  zero: string;
  reading: string;
  hundred: string;
  /** The landmark that lies at height 0. */
  level: string;
}

/** Points of one specimen by landmark. */
export type Points = ReadonlyMap<string, PlanePoint>;

/**
 * Lays points into the frame: the axis runs level from left to right, `start` stands at 0 and the end of the measured line
 * at 100 along it, and the level landmark at height 0. Undefined where a point is missing or the line has no length.
 */
export function toFrame(
  points: Points,
  frame: MeasuredFrame,
  direction: PlanePoint,
  start: PlanePoint,
): Map<string, PlanePoint> | undefined {
  const hundred = points.get(frame.hundred);
  const level = points.get(frame.level);
  if (!hundred || !level) return undefined;
  const length = along(start, hundred, direction);
  if (!(Math.abs(length) > 0)) return undefined;
  const scale = 100 / length;
  // A negative length means that the axis points from the end to the start: turning it keeps the shape as it is.
  const place = (point: PlanePoint): PlanePoint => [
    along(start, point, direction) * scale,
    across(level, point, direction) * scale,
  ];
  return new Map([...points].map(([landmark, point]) => [landmark, place(point)]));
}

/** Distance from one point to another along a direction of length one. */
export function along([x1, y1]: PlanePoint, [x2, y2]: PlanePoint, [dx, dy]: PlanePoint): number {
  return (x2 - x1) * dx + (y2 - y1) * dy;
}

function across([x1, y1]: PlanePoint, [x2, y2]: PlanePoint, [dx, dy]: PlanePoint): number {
  return (y2 - y1) * dx - (x2 - x1) * dy;
}
