import type { OutlineLine } from './slice-block.ts';

/**
 * Points of one line of an outline as an SVG attribute, in whole tenths of a unit. A line of points, not path data: a
 * browser that reads new path data works out styles anew, which costs more than all the rest of a step.
 */
export function linePoints(outline: ArrayLike<number>, { first, last }: OutlineLine): string {
  let points = '';
  for (let index = 2 * first; index <= 2 * last; index += 2)
    points += `${Math.round(outline[index]!)} ${Math.round(outline[index + 1]!)} `;
  return points;
}
