import { marksFromRelatives } from '../take-away/plate-marks.ts';
import type { PlateFrame, PlatePlace } from '../take-away/plate-frames.ts';
import type { Recomputed } from '../take-away/recompute.ts';

/** What the marks of an animal were before it was hidden, by their group. */
const asBuilt = new WeakMap<Element, Node[]>();

/** Draws an animal on every plate as its relatives see it, in the group of its own mark. */
export function drawFromRelatives(plates: readonly PlateFrame[], place: PlatePlace, each: Recomputed): void {
  for (const frame of plates) {
    const group = groupOf(frame, each.taxon);
    if (!group) continue;
    if (!asBuilt.has(group)) asBuilt.set(group, [...group.childNodes]);
    group.replaceChildren(...parse(marksFromRelatives(frame, place, each)));
  }
}

/** Gives an animal its own marks back on every plate. */
export function drawAsMeasured(plates: readonly PlateFrame[], taxon: string): void {
  for (const frame of plates) {
    const group = groupOf(frame, taxon);
    const before = group && asBuilt.get(group);
    if (before) group.replaceChildren(...before);
  }
}

function groupOf({ layout }: PlateFrame, taxon: string): Element | null {
  return document.querySelector(`#plate-${layout} .layer-marks[data-of="${CSS.escape(taxon)}"]`);
}

function parse(shapes: string): Node[] {
  const text = `<svg xmlns="http://www.w3.org/2000/svg">${shapes}</svg>`;
  const drawn = new DOMParser().parseFromString(text, 'image/svg+xml');
  return [...drawn.documentElement.childNodes].map((node) => document.importNode(node, true));
}
