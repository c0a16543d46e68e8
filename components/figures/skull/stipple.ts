import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import type { Random } from '../../../analysis/random/index.ts';
import { dotPath } from './compact-path.ts';
import { inkShape, type InkShape } from './ink-shape.ts';
import { cellAt, cellGrid, type CellGrid } from './mask.ts';
import type { Tone } from './tone.ts';
import type { Box } from './torn-region.ts';

/** Distance of two dots in full tone, and the palest tone that still has dots. */
const closest = 0.66;
const palest = 0.055;
/** Spacing of the places that are tried. */
const tried = 0.36;

interface Dot {
  readonly at: PlanePoint;
  readonly tone: number;
}

/**
 * Dots whose distance grows as tone falls, by throwing darts in a seeded order: a place is kept if no dot lies nearer than
 * its tone allows (a Poisson disc with a radius that varies). Three sizes, the darker the larger. A coarser `grain` sets dots
 * that many times as far apart.
 */
export function stippleDots(tone: Tone, box: Box, random: Random, grain = 1): InkShape[] {
  const dots = inRows(throwDots(tone, box, random, grain));
  const path = (least: number, below: number) =>
    dotPath(dots.filter((dot) => dot.tone >= least && dot.tone < below).map(({ at }) => at));
  return [
    ...inkShape('stipple-light', [path(0, 0.26)]),
    ...inkShape('stipple-middle', [path(0.26, 0.6)]),
    ...inkShape('stipple-dark', [path(0.6, Infinity)]),
  ];
}

function throwDots(tone: Tone, box: Box, random: Random, grain: number): Dot[] {
  const grid = cellGrid(box, 1);
  const cells: Dot[][] = Array.from({ length: grid.columns * grid.rows }, () => []);
  const dots: Dot[] = [];
  for (const at of shuffled(places(box, random), random)) {
    const value = Math.min(1, tone(at));
    if (value < palest) continue;
    const apart = ((grain * closest) / Math.sqrt(value)) * (0.9 + 0.2 * random());
    if (isCrowded(cells, grid, at, apart)) continue;
    const dot = { at, tone: value };
    cells[cellAt(grid, at[0], at[1])]?.push(dot);
    dots.push(dot);
  }
  return dots;
}

/** Dots from row to row, so that each is a short step from the last. */
function inRows(dots: readonly Dot[]): Dot[] {
  const row = ({ at }: Dot) => Math.floor(at[1] / 2);
  return [...dots].sort((one, other) => row(one) - row(other) || one.at[0] - other.at[0]);
}

function places([left, top, right, bottom]: Box, random: Random): PlanePoint[] {
  const columns = Math.floor((right - left) / tried);
  const rows = Math.floor((bottom - top) / tried);
  return Array.from({ length: columns * rows }, (_, index) => [
    left + ((index % columns) + random()) * tried,
    top + (Math.floor(index / columns) + random()) * tried,
  ]);
}

/** Fisher and Yates's shuffle, in place. */
function shuffled<T>(list: T[], random: Random): T[] {
  for (let last = list.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    [list[last], list[other]] = [list[other]!, list[last]!];
  }
  return list;
}

function isCrowded(
  cells: readonly (readonly Dot[])[],
  { left, top, columns, rows }: CellGrid,
  [x, y]: PlanePoint,
  apart: number,
): boolean {
  const lastColumn = Math.min(columns - 1, Math.floor(x + apart - left));
  const lastRow = Math.min(rows - 1, Math.floor(y + apart - top));
  for (let row = Math.max(0, Math.floor(y - apart - top)); row <= lastRow; row++)
    for (let column = Math.max(0, Math.floor(x - apart - left)); column <= lastColumn; column++)
      for (const { at } of cells[row * columns + column]!)
        if ((at[0] - x) ** 2 + (at[1] - y) ** 2 < apart ** 2) return true;
  return false;
}
