import { pointsOf, type DrawnBranch } from './branches.ts';
import { placeNames } from './label-placement.ts';
import { overlap, slotsOf, type Box, type Slot } from './label-slots.ts';
import type { PlateLayout } from './layout.ts';
import { PointGrid } from './point-grid.ts';
import type { PlacedMark } from './status-marks.ts';
import { path, type Mark } from './scene.ts';

/** Past so many names a long leader only adds to the thicket: those who would need one are left to the list. */
const manyNames = 60;
const shortLeader = 90;

/** What it costs to lie on one thing that is there to be counted: more than any leader, less than no place at all. */
const coverCost = 60;

/**
 * Names of the animals beside their marks. One that finds no place shows only while its animal is in focus, over the
 * others; the table beneath the figure has them all. No name lies on a mark, nor on what is `counted` while another place is
 * free.
 */
export function nameLabels(
  placed: readonly PlacedMark[],
  drawn: readonly DrawnBranch[],
  layout: PlateLayout,
  counted: readonly Box[] = [],
): Mark[] {
  const lines = new PointGrid(drawn.flatMap(({ course }) => pointsOf(course)));
  const isCrowded = placed.length > manyNames;
  const reach = isCrowded ? shortLeader * layout.markScale : Infinity;
  // An italic looks small beside the sans of the axis; among very many names room counts for more.
  const size = layout.fontSize * (isCrowded ? 1 : 1.08);
  const candidates = byCrowding(placed).map((mark) => ({
    id: mark.taxon.id,
    mark,
    own: coreBox(mark, layout, isCrowded),
    slots: clearSlots(
      slotsOf(mark, nameOf(mark, layout), size, layout, isCrowded),
      mark,
      placed,
      lines,
      counted,
    ).filter(({ leader }) => !leader || lengthOf(leader) <= reach),
  }));
  const places = placeNames(
    candidates,
    candidates.map((candidate) => candidate.own),
  );
  return candidates.flatMap(({ id, mark, slots }) => {
    const slot = places.get(id);
    if (slot) return label(mark, slot, size, layout, 'labels');
    return slots[0] ? label(mark, slots[0], size, layout, 'focus') : [];
  });
}

/**
 * Slots with what they cost more for hiding lines of descent or what is counted behind a name, and for standing nearer to
 * another animal's mark than to its own, which would misname it; cheapest first.
 */
function clearSlots(
  slots: readonly Slot[],
  own: PlacedMark,
  placed: readonly PlacedMark[],
  lines: PointGrid,
  counted: readonly Box[],
): Slot[] {
  return slots
    .map((slot) => {
      const hidden = lines.countIn(slot.box);
      const covered = counted.filter((box) => overlap(box, slot.box)).length;
      const away = distanceTo(slot.box, own);
      const misnamed =
        !slot.leader && placed.some((other) => other !== own && distanceTo(slot.box, other) < away);
      return { ...slot, cost: slot.cost + hidden * 0.22 + (misnamed ? 9 : 0) + covered * coverCost };
    })
    .sort((a, b) => a.cost - b.cost);
}

function lengthOf({ from, to }: NonNullable<Slot['leader']>): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** How far a name stands from the glyph of an animal, in pixels. */
function distanceTo(box: Box, { x, y }: PlacedMark): number {
  return Math.hypot(Math.max(box.left - x, 0, x - box.right), Math.max(box.top - y, 0, y - box.bottom));
}

/**
 * The name as the layout writes it: in full, or with the genus as its initial where room is short. A name longer than half
 * of the room is cut; caption, list and card have it whole.
 */
function nameOf(mark: PlacedMark, layout: PlateLayout): string {
  const { left, right, shorten } = layout.names;
  const name = shorten ? mark.taxon.name.replace(/^(\p{L})\p{L}+ /u, '$1. ') : mark.taxon.name;
  const letters = Math.floor(((right - left) * 0.5) / (layout.fontSize * 0.48));
  return name.length > letters ? `${[...name].slice(0, letters - 1).join('')}…` : name;
}

function label(
  mark: PlacedMark,
  slot: Slot,
  size: number,
  layout: PlateLayout,
  layer: 'labels' | 'focus',
): Mark[] {
  const datum = mark.taxon.id;
  const { x, y, anchor, leader } = slot;
  const name: Mark = {
    layer,
    role: 'taxon-name',
    datum,
    shape: { kind: 'text', x, y, size, anchor, runs: [{ text: nameOf(mark, layout), voice: 'name' }] },
  };
  if (!leader) return [name];
  const d = path`M${leader.from[0]} ${leader.from[1]}L${leader.to[0]} ${leader.to[1]}`;
  return [{ layer, role: 'leader', datum, shape: { kind: 'path', d } }, name];
}

/** Marks with many neighbours choose first: they have the fewest free slots. Ties go by id, so that the order is stable. */
function byCrowding(placed: readonly PlacedMark[]): PlacedMark[] {
  const near = (mark: PlacedMark) =>
    placed.filter((other) => Math.hypot(other.x - mark.x, other.y - mark.y) < 60).length;
  const crowd = new Map(placed.map((mark) => [mark, near(mark)]));
  return [...placed].sort((a, b) => crowd.get(b)! - crowd.get(a)! || a.taxon.id.localeCompare(b.taxon.id));
}

/**
 * What a name must not cover: glyph and whisker, but not the ruled box of an inferred value, which is wide and pale; among very
 * many, the heart of the glyph alone.
 */
function coreBox(mark: PlacedMark, layout: PlateLayout, isCrowded: boolean): Box {
  const reach = (isCrowded ? 3.4 : 7.5) * layout.markScale;
  const wide =
    isCrowded || mark.taxon.status === 'inferred'
      ? { left: mark.x - reach, right: mark.x + reach }
      : mark.box;
  return { left: wide.left, right: wide.right, top: mark.y - reach, bottom: mark.y + reach };
}
