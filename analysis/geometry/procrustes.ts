import { centroid, type PlanePoint } from './plane.ts';
import { isOnOneLine, spreadOf } from './spread.ts';

/** How one shape may be changed to lie on another. */
export interface FitRules {
  readonly scaling: boolean;
  /** `refuse` keeps left and right as they are; `allow` mirrors the shape where that fits better, and says so. */
  readonly reflection: 'refuse' | 'allow';
}

/** One shape laid on another. */
export interface Superimposition {
  readonly points: readonly PlanePoint[];
  /** Turn that was applied, -π to π; positive from the x axis towards the y axis. After the mirroring, if any. */
  readonly turnRad: number;
  readonly scale: number;
  readonly mirrored: boolean;
  /** Sum of squares that is left. */
  readonly squares: number;
  /** The mirror image would lie closer: a sign that the other side was digitised. */
  readonly fitsBetterMirrored: boolean;
}

const plainRules: FitRules = { scaling: true, reflection: 'refuse' };

/**
 * Ordinary Procrustes superimposition: moves, turns and, if asked, scales one shape on another with the least sum of
 * squares (Dryden and Mardia 2016, Statistical Shape Analysis, section 7.2, complex form for the plane). Throws for
 * unlike numbers of landmarks, fewer than three, or all in one place or on one line.
 */
export function superimpose(
  from: readonly PlanePoint[],
  to: readonly PlanePoint[],
  { scaling, reflection }: FitRules = plainRules,
): Superimposition {
  requireShape(from);
  requireShape(to);
  if (from.length !== to.length)
    throw new Error(`shapes must have the same landmarks, got ${from.length} and ${to.length}`);
  const [start, goal] = [centred(from), centred(to)];
  const straight = innerProduct(start, goal);
  const turned = innerProduct(mirrored(start), goal);
  const fitsBetterMirrored = Math.hypot(...turned) > Math.hypot(...straight);
  const mirror = reflection === 'allow' && fitsBetterMirrored;
  const [cosine, sine] = mirror ? turned : straight;
  const turnRad = Math.atan2(sine, cosine);
  const scale = scaling ? Math.hypot(cosine, sine) / spreadOf(from) ** 2 : 1;
  const [goalX, goalY] = centroid(to);
  const [turnX, turnY] = [Math.cos(turnRad) * scale, Math.sin(turnRad) * scale];
  const points = (mirror ? mirrored(start) : start).map(([x, y]): PlanePoint => [
    goalX + x * turnX - y * turnY,
    goalY + x * turnY + y * turnX,
  ]);
  return { points, turnRad, scale, mirrored: mirror, squares: squaredGap(points, to), fitsBetterMirrored };
}

function requireShape(points: readonly PlanePoint[]): void {
  if (points.length < 3) throw new Error(`a shape requires at least three landmarks, got ${points.length}`);
  if (isOnOneLine(points)) throw new Error('a shape requires landmarks that are not all on one line');
}

/** A shape moved to its centroid. */
export function centred(points: readonly PlanePoint[]): PlanePoint[] {
  const [middleX, middleY] = centroid(points);
  return points.map(([x, y]) => [x - middleX, y - middleY]);
}

/** A shape moved to its centroid and scaled to centroid size 1. */
export function preShape(points: readonly PlanePoint[]): PlanePoint[] {
  requireShape(points);
  const size = spreadOf(points);
  return centred(points).map(([x, y]) => [x / size, y / size]);
}

function mirrored(points: readonly PlanePoint[]): PlanePoint[] {
  return points.map(([x, y]) => [-x, y]);
}

/** Sum of products of one shape, as complex numbers conjugated, with another. */
function innerProduct(from: readonly PlanePoint[], to: readonly PlanePoint[]): PlanePoint {
  return from.reduce<PlanePoint>(
    ([real, imaginary], [x, y], index) => {
      const [otherX, otherY] = to[index]!;
      return [real + x * otherX + y * otherY, imaginary + x * otherY - y * otherX];
    },
    [0, 0],
  );
}

/** Sum of squared distances between the points of two shapes. */
export function squaredGap(one: readonly PlanePoint[], other: readonly PlanePoint[]): number {
  return one.reduce(
    (sum, [x, y], index) => sum + (x - other[index]![0]) ** 2 + (y - other[index]![1]) ** 2,
    0,
  );
}

/** Three distances of one pair of shapes; all are zero for shapes that differ in place, turn and size only. */
export interface ShapeDistance {
  /** Angle between the two on the sphere of shapes, radians, 0 to π/2. */
  readonly angleRad: number;
  /** Chord, both at centroid size 1: 2 sin(angle / 2). */
  readonly partial: number;
  /** Least distance with scaling free: sin(angle). */
  readonly full: number;
}

/**
 * Procrustes distances of two shapes, without reflection (Dryden and Mardia 2016, section 4.1). The angle comes from
 * the chord, which keeps its digits for shapes that are nearly alike.
 */
export function shapeDistance(one: readonly PlanePoint[], other: readonly PlanePoint[]): ShapeDistance {
  const goal = preShape(other);
  const { points } = superimpose(preShape(one), goal, { scaling: false, reflection: 'refuse' });
  const partial = Math.sqrt(squaredGap(points, goal));
  const angleRad = 2 * Math.asin(Math.min(1, partial / 2));
  return { angleRad, partial, full: Math.sin(angleRad) };
}
