import { pointBetween, type PlanePoint, type Shape } from './plane.ts';
import { applySpline, fitSpline, type ThinPlateSpline } from './thin-plate-spline.ts';

/** Longest way of a landmark in one spline, in units of the trait: longer ones fold bone. */
const longestStep = 12;

/** Splines to run one after the other, from one shape to another. */
export interface Warp {
  readonly landmarks: readonly string[];
  readonly steps: readonly ThinPlateSpline[];
}

/**
 * A chain of short splines that carries a shape onto another by the landmarks that both have; on the way, each
 * landmark runs along a straight line, at most `step` units at a time. Throws for fewer than three shared landmarks
 * and for landmarks all on one line.
 */
export function fitWarp(from: Shape, to: Shape, step: number = longestStep): Warp {
  const landmarks = [...from.keys()].filter((id) => to.has(id));
  const starts = startsOf(from, landmarks);
  const ends = landmarks.map((id) => to.get(id)!);
  const way = Math.max(
    0,
    ...starts.map(([x, y], index) => Math.hypot(ends[index]![0] - x, ends[index]![1] - y)),
  );
  const count = Math.max(1, Math.ceil(way / step));
  const stop = (share: number) => starts.map((start, index) => pointBetween(start, ends[index]!, share));
  const steps = Array.from({ length: count }, (_, index) =>
    fitSpline(index === 0 ? starts : stop(index / count), stop((index + 1) / count)),
  );
  return { landmarks, steps };
}

/** The last list of landmarks that each shape started from. */
const knownStarts = new WeakMap<Shape, readonly PlanePoint[]>();

/** Places of landmarks in a shape; the same list again where nothing has changed, so that its system is factored once. */
function startsOf(from: Shape, landmarks: readonly string[]): readonly PlanePoint[] {
  const starts = landmarks.map((id) => from.get(id)!);
  const known = knownStarts.get(from);
  if (known?.length === starts.length && starts.every((place, index) => place === known[index])) return known;
  knownStarts.set(from, starts);
  return starts;
}

/** Where a warp puts a point. */
export function applyWarp({ steps }: Warp, point: PlanePoint): PlanePoint {
  return steps.reduce((place, spline) => applySpline(spline, place), point);
}
