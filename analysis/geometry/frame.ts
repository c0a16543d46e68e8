import type { PlanePoint, Shape } from './plane.ts';

/** What fixes the frame of a drawing. */
export interface FrameDefinition {
  /** Landmark, or point of a break, that stands at the first value. */
  readonly zero: string | PlanePoint;
  /** Landmark that stands at the second value. */
  readonly hundred: string | PlanePoint;
  /** Direction along which the trait is measured, in the picture. */
  readonly axis: PlanePoint;
  /** Landmarks whose mean height is y = 0; left out, the height of `zero` is. */
  readonly level?: readonly string[];
  /** Values of the two ends: 0 and 100 for a ratio in percent, 0 and the length in mm for a length. */
  readonly values?: readonly [number, number];
}

/** The step from picture to drawing, to carry points that are no landmarks. */
export type FrameStep = (point: PlanePoint) => PlanePoint;

/**
 * The step that turns and scales a picture so that the axis lies level and the two ends stand at their values: x is
 * then a value of the trait, and y has the same scale and runs down. Throws where an end is not there, or where the
 * two lie on one line across the axis.
 */
export function drawingFrame(landmarks: Shape, frame: FrameDefinition): FrameStep {
  const [low, high] = frame.values ?? [0, 100];
  const length = Math.hypot(...frame.axis);
  if (!(length > 0)) throw new Error('a drawing frame requires an axis with a direction');
  const [cosine, sine] = [frame.axis[0] / length, frame.axis[1] / length];
  const turned: FrameStep = ([x, y]) => [x * cosine + y * sine, y * cosine - x * sine];
  const zero = turned(endOf(landmarks, frame.zero));
  const hundred = turned(endOf(landmarks, frame.hundred));
  const scale = (high - low) / (hundred[0] - zero[0]);
  if (!Number.isFinite(scale) || scale === 0)
    throw new Error('a drawing frame requires two ends that lie apart along the axis');
  // Against the axis the picture is turned half round, not mirrored.
  const level = levelOf(landmarks, frame.level, turned) ?? zero[1];
  return (point) => {
    const [x, y] = turned(point);
    return [low + (x - zero[0]) * scale, (y - level) * scale];
  };
}

function endOf(landmarks: Shape, end: string | PlanePoint): PlanePoint {
  if (typeof end !== 'string') return end;
  const point = landmarks.get(end);
  if (!point) throw new Error(`a drawing frame requires the landmark ${end}`);
  return point;
}

function levelOf(
  landmarks: Shape,
  ids: readonly string[] | undefined,
  turned: FrameStep,
): number | undefined {
  const heights = (ids ?? []).flatMap((id) => {
    const point = landmarks.get(id);
    return point ? [turned(point)[1]] : [];
  });
  return heights.length === 0 ? undefined : heights.reduce((sum, height) => sum + height, 0) / heights.length;
}

/** Landmarks of a picture in the frame of a drawing; see `drawingFrame`. */
export function toDrawingFrame(landmarks: Shape, frame: FrameDefinition): Shape {
  const step = drawingFrame(landmarks, frame);
  return new Map([...landmarks].map(([id, point]) => [id, step(point)]));
}
