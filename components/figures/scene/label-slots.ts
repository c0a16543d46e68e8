import type { PlateLayout } from './layout.ts';
import type { PlacedMark } from './status-marks.ts';

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** A place where a name could stand. Far ones need a line to their mark. */
export interface Slot {
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
  box: Box;
  cost: number;
  leader?: { from: readonly [number, number]; to: readonly [number, number] };
}

/** Mean width of a letter of the italic serif, as a share of its size. */
const italicLetter = 0.44;

/** How finely places off to the sides are tried: distances from the mark, and parts of a row above and below it. */
interface Grain {
  readonly away: readonly number[];
  readonly row: number;
}
const coarse: Grain = { away: [14, 26, 40, 58, 80, 110, 150, 200], row: 0.6 };
/** Among very many marks a gap as large as a name is rare, and a leader is short: every such gap is tried. */
const fine: Grain = { away: [8, 14, 20, 26, 33, 40, 48, 56, 64, 72, 80], row: 0.2 };

/** Places for a name, the cheapest first: touching its mark, then off to either side with a line. */
export function slotsOf(
  mark: PlacedMark,
  name: string,
  size: number,
  layout: PlateLayout,
  isCrowded = false,
): Slot[] {
  const width = name.length * size * italicLetter;
  const near = nearSlots(mark, width, size, layout.markScale);
  const far = farSlots(mark, width, size, layout.markScale, isCrowded ? fine : coarse);
  return [...near, ...far].filter((slot) => inside(slot.box, layout)).sort((a, b) => a.cost - b.cost);
}

function nearSlots(mark: PlacedMark, width: number, size: number, scale: number): Slot[] {
  const gap = 6 * scale;
  const near = 9 * scale;
  const middle = mark.y + size * 0.3;
  const { left, right, top, bottom } = mark.box;
  return [
    place(right + gap, middle, 'start', 0, width, size),
    place(left - gap, middle, 'end', 1, width, size),
    place(mark.x + near, mark.y - size * 0.75, 'start', 2, width, size),
    place(mark.x + near, mark.y + size * 1.2, 'start', 2.2, width, size),
    place(mark.x - near, mark.y - size * 0.75, 'end', 2.6, width, size),
    place(mark.x - near, mark.y + size * 1.2, 'end', 2.8, width, size),
    place(mark.x, top - size * 0.35, 'middle', 3, width, size),
    place(mark.x, bottom + size * 0.95, 'middle', 3.2, width, size),
  ];
}

function farSlots(mark: PlacedMark, width: number, size: number, scale: number, grain: Grain): Slot[] {
  const slots: Slot[] = stackedSlots(mark, width, size, scale);
  for (const away of grain.away) {
    for (const rows of rowsAt(away, grain.row)) {
      const y = mark.y + rows * size;
      const cost = 5 + Math.hypot(away, (y - mark.y) / scale) / 8;
      for (const side of [1, -1] as const) {
        const edge = side === 1 ? mark.box.right : mark.box.left;
        const x = edge + side * away * scale;
        const anchor = side === 1 ? 'start' : 'end';
        const slot = place(x, y + size * 0.3, anchor, side === 1 ? cost : cost + 1, width, size);
        slots.push({
          ...slot,
          leader: { from: [edge + side * 2 * scale, mark.y], to: [x - side * 4 * scale, y] },
        });
      }
    }
  }
  return slots;
}

/** Rows above and below the mark at which a name may stand: more where it is near, so that leaders stay short. */
function rowsAt(away: number, row: number): number[] {
  const reach = Math.round((away < 100 ? 7.2 : 3) / row);
  return Array.from({ length: 2 * reach + 1 }, (_, index) => (index - reach) * row);
}

/** Above and below the bar, with a short upright line. */
function stackedSlots(mark: PlacedMark, width: number, size: number, scale: number): Slot[] {
  return [1.3, 2.4, 3.5].flatMap((rows, index): Slot[] => {
    const { top, bottom } = mark.box;
    const above = place(
      mark.x + 3 * scale,
      top - rows * size + size * 0.3,
      'start',
      4 + index * 2,
      width,
      size,
    );
    const below = place(
      mark.x + 3 * scale,
      bottom + rows * size + size * 0.3,
      'start',
      6.4 + index * 2.4,
      width,
      size,
    );
    return [
      { ...above, leader: { from: [mark.x, top - 1], to: [mark.x, above.box.bottom - size * 0.4] } },
      { ...below, leader: { from: [mark.x, bottom + 1], to: [mark.x, below.box.top + size * 0.4] } },
    ];
  });
}

function place(
  x: number,
  y: number,
  anchor: Slot['anchor'],
  cost: number,
  width: number,
  size: number,
): Slot {
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return {
    x,
    y,
    anchor,
    cost,
    box: { left, right: left + width, top: y - size * 0.72, bottom: y + size * 0.24 },
  };
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

/** Whether a straight line runs through a box, by the signs of its corners and the line's own extent. */
export function crosses(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  box: Box,
): boolean {
  const extent = {
    left: Math.min(x1, x2),
    right: Math.max(x1, x2),
    top: Math.min(y1, y2),
    bottom: Math.max(y1, y2),
  };
  if (
    extent.left > box.right ||
    extent.right < box.left ||
    extent.top > box.bottom ||
    extent.bottom < box.top
  )
    return false;
  const side = (x: number, y: number) => Math.sign((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1));
  const signs = [
    side(box.left, box.top),
    side(box.right, box.top),
    side(box.left, box.bottom),
    side(box.right, box.bottom),
  ];
  return !(signs.every((sign) => sign > 0) || signs.every((sign) => sign < 0));
}
