import { distanceToStretch, type PlanePoint } from '../../analysis/geometry/index.ts';
import type { OutlineLine, SliceBlock } from './slice-block.ts';

/** Farthest that a moving picture's edge may lie from the exact one, in tenths of a unit: a pixel and a half of a small picture. */
const tolerance = 25;

/**
 * The points of a line that draw it within the tolerance in every outline: the line is halved where it lies farthest from its
 * chord in any of them (Douglas and Peucker 1973, for all shapes at once). Outlines that are missing are passed over.
 */
export function roughPoints(
  outlines: SliceBlock['outlines'],
  { first, last }: Pick<OutlineLine, 'first' | 'last'>,
): number[] {
  const [farthest, gap] = farthestBetween(outlines, first, last);
  if (gap <= tolerance) return first === last ? [first] : [first, last];
  const before = roughPoints(outlines, { first, last: farthest });
  return [...before, ...roughPoints(outlines, { first: farthest, last }).slice(1)];
}

function farthestBetween(outlines: SliceBlock['outlines'], first: number, last: number): [number, number] {
  let [farthest, most] = [first, 0];
  for (const outline of outlines) {
    if (!outline) continue;
    const at = (index: number): PlanePoint => [outline[2 * index]!, outline[2 * index + 1]!];
    for (let index = first + 1; index < last; index++) {
      const gap = distanceToStretch(at(index), at(first), at(last));
      if (gap > most) [farthest, most] = [index, gap];
    }
  }
  return [farthest, most];
}
