import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import type { Points } from './frame.ts';
import type { Break } from './taxon-shape.ts';

/** How far beyond the edge of the bone a restored point stands at least, in units of the measured line. */
export const leastBeyond = 0.5;

/**
 * Restored points, none of them behind a break: what lies outward of every landmark found on the bone is pushed along the
 * axis until it stands beyond the edge at its own height. Bone that is there cannot have been lost. Other points stay.
 */
export function beyondBreaks(
  restored: Points,
  found: Points,
  breaks: readonly Break[],
): Map<string, PlanePoint> {
  const xs = [...found.values()].map(([x]) => x);
  const middle = xs.reduce((sum, x) => sum + x, 0) / xs.length;
  const pushed = new Map(restored);
  for (const { points: edge } of breaks) {
    if (edge.length === 0 || xs.length === 0) continue;
    const outward = edge.reduce((sum, [x]) => sum + x, 0) / edge.length < middle ? -1 : 1;
    const outermost = Math.max(...xs.map((x) => x * outward));
    for (const [id, [x, y]] of pushed) {
      if (x * outward <= outermost) continue;
      pushed.set(id, [outward * Math.max(x * outward, edgeAt(edge, y) * outward + leastBeyond), y]);
    }
  }
  return pushed;
}

/** Where the edge of a break runs at a height; beyond its ends it goes on straight across the axis. */
function edgeAt(edge: readonly PlanePoint[], y: number): number {
  const line = [...edge].sort((one, other) => one[1] - other[1]);
  const after = line.findIndex((point) => point[1] >= y);
  if (after === 0) return line[0]![0];
  if (after === -1) return line.at(-1)![0];
  const [start, end] = [line[after - 1]!, line[after]!];
  return start[0] + ((end[0] - start[0]) * (y - start[1])) / (end[1] - start[1]);
}
