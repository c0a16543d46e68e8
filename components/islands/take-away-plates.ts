import { marksFromRelatives } from '../take-away/plate-marks.ts';
import type { PlateFrame, PlatePlace } from '../take-away/plate-frames.ts';
import type { Recomputed } from '../take-away/recompute.ts';

/** What the marks of an animal were before it was hidden, and where their group stood. */
const asBuilt = new WeakMap<Element, { marks: Node[]; place: Comment }>();

/** Draws an animal on every plate as its relatives see it, in the group of its own mark, which then lies under every disc. */
export function drawFromRelatives(plates: readonly PlateFrame[], place: PlatePlace, each: Recomputed): void {
  for (const frame of plates) {
    const group = groupOf(frame, each.taxon);
    if (!group) continue;
    if (!asBuilt.has(group)) lower(group);
    group.replaceChildren(...parse(marksFromRelatives(frame, place, each)));
  }
}

/** Gives an animal its own marks back on every plate, where they stood. */
export function drawAsMeasured(plates: readonly PlateFrame[], taxon: string): void {
  for (const frame of plates) {
    const group = groupOf(frame, taxon);
    const before = group && asBuilt.get(group);
    if (!before) continue;
    group.replaceChildren(...before.marks);
    before.place.replaceWith(group);
    asBuilt.delete(group);
  }
}

/** Moves a group under all other marks, keeping its place: a wide interval must not cover a measurement. */
function lower(group: Element): void {
  const place = document.createComment('');
  asBuilt.set(group, { marks: [...group.childNodes], place });
  const lowest = group.parentElement!.querySelector('.layer-marks')!;
  group.before(place);
  if (lowest !== group) lowest.before(group);
}

function groupOf({ layout }: PlateFrame, taxon: string): Element | null {
  return document.querySelector(`#plate-${layout} .layer-marks[data-of="${CSS.escape(taxon)}"]`);
}

function parse(shapes: string): Node[] {
  const text = `<svg xmlns="http://www.w3.org/2000/svg">${shapes}</svg>`;
  const drawn = new DOMParser().parseFromString(text, 'image/svg+xml');
  return [...drawn.documentElement.childNodes].map((node) => document.importNode(node, true));
}
