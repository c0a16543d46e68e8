import { pointsOf, type Course } from './branches.ts';
import { coordinate } from './scene.ts';

/** Length of a dash and of the gap after it, in pixels of the wide plate. */
const dash = 2.6;
const gap = 5;

/**
 * The dash pattern of a line that is whole but for a stretch between two heights: whole, dashed, whole. Lengths are measured
 * along the line's own points, near enough for a pattern. Nothing where the stretch is shorter than two dashes.
 */
export function ghostDashes(course: Course, fromY: number, toY: number): string | undefined {
  const points = [course.start, ...pointsOf(course)];
  let length = 0;
  let [from, to] = [fromY >= course.start[1] ? 0 : -1, -1];
  for (let at = 1; at < points.length; at++) {
    const [here, before] = [points[at]!, points[at - 1]!];
    length += Math.hypot(here[0] - before[0], here[1] - before[1]);
    if (from < 0 && here[1] <= fromY) from = length;
    if (to < 0 && here[1] <= toY) to = length;
  }
  if (to < 0) to = length;
  const count = Math.floor((to - from) / (dash + gap));
  if (from < 0 || count < 2) return undefined;
  const fit = (to - from) / count - dash;
  const pattern = Array.from({ length: count }, () => `${dash} ${coordinate(fit)}`).join(' ');
  const lead = from < 0.1 ? '' : `${coordinate(from)} ${coordinate(fit)} `;
  return `${lead}${pattern} ${coordinate(length - to + gap)} ${gap}`;
}
