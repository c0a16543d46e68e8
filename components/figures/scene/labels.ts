import type { PlateLayout } from './layout.ts';
import type { PlacedMark } from './status-marks.ts';
import { path, type Mark } from './scene.ts';

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

interface Slot {
  x: number;
  y: number;
  anchor: 'start' | 'end' | 'middle';
  box: Box;
  cost: number;
}

/** Mean width of a letter of the italic serif, as a share of its size. */
const italicLetter = 0.46;

/**
 * Names beside the marks: each takes the cheapest free slot round its mark; a name that finds none goes to the leader
 * column at the right, with a thin line to its mark; where a layout has no such column it is left to the list beneath.
 */
export function nameLabels(placed: readonly PlacedMark[], layout: PlateLayout): Mark[] {
  const size = layout.fontSize * 1.08;
  const taken: Box[] = placed.map((mark) => coreBox(mark, layout));
  const homeless: PlacedMark[] = [];
  const marks: Mark[] = [];
  for (const mark of byCrowding(placed)) {
    const slot = slots(mark, nameOf(mark, layout), size, layout)
      .filter((each) => inside(each.box, layout) && !taken.some((box) => overlap(box, each.box)))
      .sort((a, b) => a.cost - b.cost)[0];
    if (!slot) {
      homeless.push(mark);
      continue;
    }
    taken.push(slot.box);
    marks.push(label(mark, slot.x, slot.y, slot.anchor, size, layout));
  }
  return [...marks, ...leaderColumn(homeless, taken, size, layout)];
}

/** The name as the layout writes it: in full, or with the genus as its initial where room is short. */
function nameOf(mark: PlacedMark, layout: PlateLayout): string {
  return layout.names.shorten ? mark.taxon.name.replace(/^(\p{L})\p{L}+ /u, '$1. ') : mark.taxon.name;
}

function label(
  mark: PlacedMark,
  x: number,
  y: number,
  anchor: Slot['anchor'],
  size: number,
  layout: PlateLayout,
): Mark {
  return {
    layer: 'labels',
    role: 'taxon-name',
    datum: mark.taxon.id,
    shape: { kind: 'text', x, y, size, anchor, runs: [{ text: nameOf(mark, layout), voice: 'name' }] },
  };
}

/** Marks with many neighbours choose first: they have the fewest free slots. Ties go by id, so that the order is stable. */
function byCrowding(placed: readonly PlacedMark[]): PlacedMark[] {
  const crowd = new Map(
    placed.map((mark) => [
      mark,
      placed.filter((other) => Math.hypot(other.x - mark.x, other.y - mark.y) < 60).length,
    ]),
  );
  return [...placed].sort((a, b) => crowd.get(b)! - crowd.get(a)! || a.taxon.id.localeCompare(b.taxon.id));
}

function slots(mark: PlacedMark, name: string, size: number, layout: PlateLayout): Slot[] {
  const width = name.length * size * italicLetter;
  const gap = 6 * layout.markScale;
  const middle = mark.y + size * 0.3;
  const slot = (x: number, y: number, anchor: Slot['anchor'], cost: number): Slot => {
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    return {
      x,
      y,
      anchor,
      cost,
      box: { left, right: left + width, top: y - size * 0.72, bottom: y + size * 0.24 },
    };
  };
  const near = 9 * layout.markScale;
  return [
    slot(mark.box.right + gap, middle, 'start', 0),
    slot(mark.box.left - gap, middle, 'end', 1),
    slot(mark.x + near, mark.y - size * 0.75, 'start', 2),
    slot(mark.x + near, mark.y + size * 1.2, 'start', 2.2),
    slot(mark.x - near, mark.y - size * 0.75, 'end', 2.6),
    slot(mark.x - near, mark.y + size * 1.2, 'end', 2.8),
    slot(mark.x, mark.box.top - size * 0.35, 'middle', 3),
    slot(mark.x, mark.box.bottom + size * 0.95, 'middle', 3.2),
  ];
}

/** What a name must not cover: glyph and whisker, but not the ruled box of an inferred value, which is wide and pale. */
function coreBox(mark: PlacedMark, layout: PlateLayout): Box {
  const reach = 7.5 * layout.markScale;
  const wide = mark.taxon.status === 'inferred' ? { left: mark.x - reach, right: mark.x + reach } : mark.box;
  return { left: wide.left, right: wide.right, top: mark.y - reach, bottom: mark.y + reach };
}

/** Homeless names, one under the other at the right in the order of their marks, each with a line to its mark. */
function leaderColumn(
  homeless: readonly PlacedMark[],
  taken: readonly Box[],
  size: number,
  layout: PlateLayout,
): Mark[] {
  const column = layout.names.leaders;
  if (column === undefined) return [];
  let lowest = layout.chart.top;
  const placedBoxes = [...taken];
  return [...homeless]
    .sort((a, b) => a.y - b.y)
    .flatMap((mark): Mark[] => {
      const width = nameOf(mark, layout).length * size * italicLetter;
      let y = Math.max(lowest, mark.y + size * 0.3);
      const box = (): Box => ({
        left: column,
        right: column + width,
        top: y - size * 0.72,
        bottom: y + size * 0.24,
      });
      while (placedBoxes.some((other) => overlap(other, box())) && y < layout.chart.bottom) y += 4;
      if (y >= layout.chart.bottom) return [];
      lowest = y + size * 1.05;
      placedBoxes.push(box());
      const d = path`M${mark.box.right + 3} ${mark.y}L${column - 5} ${y - size * 0.28}`;
      return [
        { layer: 'labels', role: 'leader', datum: mark.taxon.id, shape: { kind: 'path', d } },
        label(mark, column, y, 'start', size, layout),
      ];
    });
}

function inside(box: Box, layout: PlateLayout): boolean {
  return (
    box.left >= layout.names.left &&
    box.right <= layout.names.right &&
    box.top >= layout.chart.top - layout.fontSize * 1.4 &&
    box.bottom <= layout.height - 2
  );
}

export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
