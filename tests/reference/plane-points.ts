import type { PlanePoint } from '../../analysis/geometry/index.ts';

/** Pairs of numbers of a file as points. Throws for a row that is no pair. */
export function planePoints(rows: readonly (readonly number[])[]): PlanePoint[] {
  return rows.map(([x, y, ...more]) => {
    if (x === undefined || y === undefined || more.length > 0) throw new Error('a point has two coordinates');
    return [x, y];
  });
}
