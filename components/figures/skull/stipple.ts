import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import type { Random } from '../../../analysis/random/index.ts';
import { coordinate } from '../scene/scene.ts';
import { inkShape, type InkShape } from './ink-shape.ts';
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
 * its tone allows (a Poisson disc with a radius that varies). Three sizes, the darker the larger.
 */
export function stippleDots(tone: Tone, box: Box, random: Random): InkShape[] {
  const dots = throwDots(tone, box, random);
  const path = (least: number, below: number) =>
    dots
      .filter((dot) => dot.tone >= least && dot.tone < below)
      .map(({ at }) => `M${coordinate(at[0])} ${coordinate(at[1])}h0`)
      .join('');
  return [
    ...inkShape('stipple-light', [path(0, 0.26)]),
    ...inkShape('stipple-middle', [path(0.26, 0.6)]),
    ...inkShape('stipple-dark', [path(0.6, Infinity)]),
  ];
}

function throwDots(tone: Tone, box: Box, random: Random): Dot[] {
  const cells = new Map<number, PlanePoint[]>();
  const dots: Dot[] = [];
  for (const at of shuffled(places(box, random), random)) {
    const value = Math.min(1, tone(at));
    if (value < palest) continue;
    const apart = (closest / Math.sqrt(value)) * (0.9 + 0.2 * random());
    if (isCrowded(cells, at, apart)) continue;
    const key = keyOf(Math.floor(at[0]), Math.floor(at[1]));
    cells.set(key, [...(cells.get(key) ?? []), at]);
    dots.push({ at, tone: value });
  }
  return dots;
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

function keyOf(column: number, row: number): number {
  return (column + 4096) * 16384 + row + 4096;
}

function isCrowded(cells: ReadonlyMap<number, PlanePoint[]>, [x, y]: PlanePoint, apart: number): boolean {
  const reach = Math.ceil(apart);
  for (let column = Math.floor(x) - reach; column <= Math.floor(x) + reach; column++)
    for (let row = Math.floor(y) - reach; row <= Math.floor(y) + reach; row++)
      for (const [otherX, otherY] of cells.get(keyOf(column, row)) ?? [])
        if ((otherX - x) ** 2 + (otherY - y) ** 2 < apart ** 2) return true;
  return false;
}
