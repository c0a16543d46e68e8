import type { Branch } from './branch-list.ts';
import { ghostDashes } from './ghost-dashes.ts';
import type { Scales } from './scales.ts';
import type { PlacedMark } from './status-marks.ts';
import { path, type Mark } from './scene.ts';

type Point = readonly [x: number, y: number];

/** Clearance that a line keeps from the mark of any animal that is not its own, in pixels of the wide plate. */
const clearance = 9;

/** Offsets of the lane in which a branch rises, from the place where it ends, in pixels; the first clear one is taken. */
const lanes = [0, -7, 7, -13, 13, -20, 20, -28, 28, -38, 38];

/** A branch with the course that its line takes. */
export interface DrawnBranch {
  branch: Branch;
  course: Course;
  /** Dash pattern of a branch that must have lived for a while unfound. */
  dashes?: string;
}

/**
 * Courses of the lines of descent. Each leaves its fork, rises in a lane, and meets its animal at the foot of the bar.
 * Where the straight lane would run through another animal's mark, the nearest lane that passes clear of all is taken.
 */
export function drawnBranches(
  branches: readonly Branch[],
  placed: readonly PlacedMark[],
  scales: Scales,
  markScale: number,
): DrawnBranch[] {
  const at = new Map(placed.map((mark) => [mark.taxon.id, mark]));
  return branches.map((branch) => {
    const own = branch.taxon ? at.get(branch.taxon) : undefined;
    const start: Point = [scales.x(branch.from.value), scales.y(branch.from.ageMa)];
    const end: Point = [own?.x ?? scales.x(branch.to.value), scales.y(branch.to.ageMa)];
    const others = placed.filter((mark) => mark !== own);
    const course = clearCourse(start, end, others, clearance * markScale);
    const { ghost } = branch;
    const dashes = ghost && ghostDashes(course, scales.y(ghost.fromMa), scales.y(ghost.toMa));
    return { branch, course, ...(dashes && { dashes }) };
  });
}

/** Lines of descent, each over a halo of paper. */
export function branchMarks(drawn: readonly DrawnBranch[]): Mark[] {
  const lines = drawn.map(({ branch, course, dashes }) => ({ branch, dashes, d: draw(course) }));
  return [
    ...lines.map(({ d }): Mark => ({ layer: 'branches', role: 'branch-halo', shape: { kind: 'path', d } })),
    ...lines.map(({ branch, d, dashes }): Mark => ({
      layer: 'branches',
      role: branch.taxon ? 'branch twig' : 'branch',
      datum: branch.taxon ?? branch.id,
      shape: { kind: 'path', d, ...(dashes && { dashes }) },
    })),
  ];
}

/** Where a line stands across the plate at a height, in pixels; beyond its ends, where it ends. */
export function crossing(course: Course, y: number): number {
  const points = [course.start, ...pointsOf(course)];
  const above = points.findIndex((point) => point[1] <= y);
  if (above < 0) return course.end[0];
  const [upper, lower] = [points[above]!, points[Math.max(0, above - 1)]!];
  const share = lower[1] === upper[1] ? 0 : (lower[1] - y) / (lower[1] - upper[1]);
  return lower[0] + (upper[0] - lower[0]) * Math.min(1, Math.max(0, share));
}

/** A branch as two bends with a straight lane between: fork, foot of the lane, head of the lane, end. */
export interface Course {
  start: Point;
  foot: Point;
  head: Point;
  end: Point;
}

function clearCourse(start: Point, end: Point, others: readonly PlacedMark[], wanted: number): Course {
  let best = courseThrough(start, end, end[0]);
  let bestGap = -1;
  const rise = Math.max(0, start[1] - end[1]);
  // A detour is never wider than the branch is high: a short branch runs straight.
  for (const offset of lanes.filter((each) => Math.abs(each) <= rise)) {
    const course = courseThrough(start, end, end[0] + offset);
    const gap = smallestGap(course, others);
    if (gap >= wanted) return course;
    if (gap > bestGap) [best, bestGap] = [course, gap];
  }
  return best;
}

/** The bends take a third of a short branch and a fixed height of a long one, so that long lines soon run straight. */
function courseThrough(start: Point, end: Point, lane: number): Course {
  const rise = Math.max(0, start[1] - end[1]);
  const lower = Math.min(rise * (lane === end[0] ? 0.7 : 0.45), 14 + Math.abs(lane - start[0]) * 0.8);
  const upper = lane === end[0] ? 0 : Math.min(rise * 0.4, 12 + Math.abs(lane - end[0]) * 1.1);
  return { start, foot: [lane, start[1] - lower], head: [lane, end[1] + upper], end };
}

function draw({ start, foot, head, end }: Course): string {
  const [a, b] = bend(start, foot);
  const first = path`M${start[0]} ${start[1]}C${a[0]} ${a[1]} ${b[0]} ${b[1]} ${foot[0]} ${foot[1]}V${head[1]}`;
  if (head[0] === end[0]) return first + path`V${end[1]}`;
  const middle = (head[1] + end[1]) / 2;
  return first + path`C${head[0]} ${middle} ${end[0]} ${middle} ${end[0]} ${end[1]}`;
}

/** Control points of a bend that leaves the fork aslant and enters the lane upright. */
function bend([x1, y1]: Point, [x2, y2]: Point): readonly [Point, Point] {
  return [
    [x1 + (x2 - x1) * 0.5, y1 + (y2 - y1) * 0.15],
    [x2, y1 + (y2 - y1) * 0.45],
  ];
}

/** Smallest distance from a course to the bar or glyph of any other animal; infinite when there is none. */
function smallestGap(course: Course, others: readonly PlacedMark[]): number {
  let smallest = Infinity;
  for (const [x, y] of pointsOf(course)) {
    for (const other of others) {
      const dx = Math.abs(x - other.x);
      const dy = Math.max(other.box.top - y, 0, y - other.box.bottom);
      smallest = Math.min(smallest, Math.hypot(dx, dy));
    }
  }
  return smallest;
}

/** Points along a course, about two pixels apart on its lane. */
export function pointsOf({ start, foot, head, end }: Course): Point[] {
  const [a, b] = bend(start, foot);
  const points: Point[] = [];
  for (let step = 2; step <= 10; step++) points.push(bezierPoint([start, a, b, foot], step / 10));
  for (let y = foot[1]; y > head[1]; y -= 3) points.push([foot[0], y]);
  const middle = (head[1] + end[1]) / 2;
  for (let step = 0; step <= 6; step++)
    points.push(bezierPoint([head, [head[0], middle], [end[0], middle], end], step / 6));
  return points;
}

/** The point of a cubic Bézier curve at a share of its parameter, by Bernstein's polynomials. */
function bezierPoint(curve: readonly [Point, Point, Point, Point], share: number): Point {
  const rest = 1 - share;
  const weights = [rest ** 3, 3 * rest ** 2 * share, 3 * rest * share ** 2, share ** 3];
  return curve.reduce<Point>(
    ([x, y], point, index) => [x + weights[index]! * point[0], y + weights[index]! * point[1]],
    [0, 0],
  );
}
