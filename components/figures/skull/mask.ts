import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import type { Box } from './torn-region.ts';

/** Cells over a box: column by column in each row. */
export interface CellGrid {
  readonly left: number;
  readonly top: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** Which cells of a grid lie in something. */
export type Mask = Uint8Array;

/** Square cells of `step` units over a box. */
export function cellGrid([left, top, right, bottom]: Box, step: number): CellGrid {
  return {
    left,
    top,
    step,
    columns: Math.ceil((right - left) / step),
    rows: Math.ceil((bottom - top) / step),
  };
}

/** Cells whose middle lies in a ring. Cost: rows times edges. */
export function maskOf(ring: readonly PlanePoint[], grid: CellGrid): Mask {
  const mask = new Uint8Array(grid.columns * grid.rows);
  for (let row = 0; row < grid.rows; row++) {
    const y = grid.top + (row + 0.5) * grid.step;
    const crossings = crossingsAt(ring, y);
    for (let pair = 0; pair + 1 < crossings.length; pair += 2) {
      const first = Math.max(0, Math.ceil((crossings[pair]! - grid.left) / grid.step - 0.5));
      const end = (crossings[pair + 1]! - grid.left) / grid.step - 0.5;
      for (let column = first; column < grid.columns && column <= end; column++)
        mask[row * grid.columns + column] = 1;
    }
  }
  return mask;
}

function crossingsAt(ring: readonly PlanePoint[], y: number): number[] {
  const crossings: number[] = [];
  ring.forEach(([x, height], index) => {
    const [nextX, nextHeight] = ring[(index + 1) % ring.length]!;
    if (height > y !== nextHeight > y)
      crossings.push(x + ((nextX - x) * (y - height)) / (nextHeight - height));
  });
  return crossings.sort((one, other) => one - other);
}

/** Index of the cell that a point lies in; -1 outside the grid. */
export function cellAt({ left, top, step, columns, rows }: CellGrid, x: number, y: number): number {
  const column = Math.floor((x - left) / step);
  const row = Math.floor((y - top) / step);
  return column >= 0 && row >= 0 && column < columns && row < rows ? row * columns + column : -1;
}

/**
 * Way from a point in a direction until the answer of a mask is first as wanted, in steps of half a unit; `most` where it
 * never is on the way there.
 */
export function wayTo(
  mask: Mask,
  grid: CellGrid,
  [x, y]: PlanePoint,
  [dx, dy]: PlanePoint,
  { wanted, most }: { wanted: 0 | 1; most: number },
): number {
  for (let way = 0.5; way < most; way += 0.5) {
    const cell = cellAt(grid, x + dx * way, y + dy * way);
    if ((cell < 0 ? 0 : mask[cell]) === wanted) return way;
  }
  return most;
}
