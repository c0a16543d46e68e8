import type { PlanePoint, Shape } from './plane.ts';

/** A shape with the value that goes with it. */
export interface ValuedShape {
  readonly shape: Shape;
  readonly value: number;
}

/** How far each landmark moves, in x and y, when the value rises by one. */
export type ShapeTrend = ReadonlyMap<string, PlanePoint>;

/**
 * Slope of every coordinate on the value by least squares, each landmark over the shapes that have it. A description of
 * the shapes at hand, not corrected for descent. A landmark in fewer than three shapes, or in shapes of one value, is
 * left out.
 */
export function shapeTrend(shapes: readonly ValuedShape[]): ShapeTrend {
  const landmarks = new Set(shapes.flatMap(({ shape }) => [...shape.keys()]));
  return new Map(
    [...landmarks].flatMap((id): [string, PlanePoint][] => {
      const pairs = shapes.flatMap(({ shape, value }) => {
        const at = shape.get(id);
        return at ? [{ at, value }] : [];
      });
      const slope = slopeOf(pairs);
      return slope ? [[id, slope]] : [];
    }),
  );
}

function slopeOf(pairs: readonly { at: PlanePoint; value: number }[]): PlanePoint | undefined {
  if (pairs.length < 3) return undefined;
  const mean = pairs.reduce((sum, { value }) => sum + value, 0) / pairs.length;
  const spread = pairs.reduce((sum, { value }) => sum + (value - mean) ** 2, 0);
  if (!(spread > 0)) return undefined;
  const along = (axis: 0 | 1) =>
    pairs.reduce((sum, { at, value }) => sum + (value - mean) * at[axis], 0) / spread;
  return [along(0), along(1)];
}

/**
 * A shape as it would be at another value: landmarks that are not held move along the trend, so that neighbours go
 * along; `reading` is set to the value exactly. Landmarks without a trend stay.
 */
export function shapeAtValue(
  shape: Shape,
  trend: ShapeTrend,
  { reading, value, held }: { reading: string; value: number; held: ReadonlySet<string> },
): Shape {
  const start = shape.get(reading);
  if (!start) throw new Error(`the shape has no landmark ${reading}`);
  const change = value - start[0];
  return new Map(
    [...shape].map(([id, at]): [string, PlanePoint] => {
      const slope = held.has(id) ? undefined : trend.get(id);
      const moved: PlanePoint = slope ? [at[0] + slope[0] * change, at[1] + slope[1] * change] : at;
      return [id, id === reading ? [value, moved[1]] : moved];
    }),
  );
}
