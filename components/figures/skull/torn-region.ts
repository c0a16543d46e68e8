import { contours } from 'd3';
import { fitField, isInRing, type PlanePoint } from '../../../analysis/geometry/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { roughenRing } from './rough-ring.ts';
import type { PlacedSkull } from './place-template.ts';
import type { SkullDrawing } from './skull-drawing.ts';

/** Where a part is restored, and the edges at which its bone ends. */
export interface TornRegion {
  readonly isRestored: (point: PlanePoint) => boolean;
  /** Closed rings by the even-odd rule; none where the part is whole. */
  readonly rings: readonly (readonly PlanePoint[])[];
  /** Lines along which bone ends, over the whole plane; only those on bone are drawn. */
  readonly edges: readonly (readonly PlanePoint[])[];
}

const gridStep = 1.5;
const margin = 24;
const boxStep = 6;

/**
 * The restored region of one part of a skull. Landmarks found on the bone hold it, landmarks from relatives do not,
 * and it ends at the points of a break; between these the edge runs as a smooth field does, roughened. A part none of
 * whose elements is listed is restored whole; one with neither breaks nor landmarks from relatives not at all.
 */
export function tornRegion(drawing: SkullDrawing, part: string, placed: PlacedSkull): TornRegion {
  const { held, lost, ends } = evidence(drawing, part, placed);
  const listed = drawing.template.parts[part]!.elements.some((name) => drawing.elements.includes(name));
  const box = boxOf(placed);
  if (!listed || held.length === 0) return { isRestored: () => true, rings: [ringOf(box)], edges: [] };
  if (lost.length === 0) return { isRestored: () => false, rings: [], edges: [] };
  const rings = restoredRings(held, lost, ends, box).map((ring, index) =>
    roughenRing(ring, ends, box, seededRandom(drawing.id, part, index)),
  );
  const outlines = rings.map(({ ring }) => ring);
  const isRestored = (point: PlanePoint) => {
    const near = intoBox(point, box);
    return outlines.reduce((inside, ring) => inside !== isInRing(near, ring), false);
  };
  return { isRestored, rings: outlines, edges: rings.flatMap(({ edges }) => edges) };
}

/** The point of the box that is nearest: beyond it, where the far end of a restoration can reach, all goes on as at its edge. */
function intoBox([x, y]: PlanePoint, [left, top, right, bottom]: Box): PlanePoint {
  const between = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most);
  return [between(x, left + gridStep, right - gridStep), between(y, top + gridStep, bottom - gridStep)];
}

/** Left, top, right and bottom. */
export type Box = readonly [number, number, number, number];

function ringOf([left, top, right, bottom]: Box): PlanePoint[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/**
 * Box of everything drawn, with room around it, widened to whole steps: so the torn edge of one animal is the same
 * however finely its curves are traced.
 */
export function boxOf({ pieces }: PlacedSkull): Box {
  const points = pieces.flatMap((piece) => piece.points);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const wholeStep = (value: number) => Math.round(value / boxStep) * boxStep;
  return [
    wholeStep(Math.min(...xs)) - margin,
    wholeStep(Math.min(...ys)) - margin,
    wholeStep(Math.max(...xs)) + margin,
    wholeStep(Math.max(...ys)) + margin,
  ];
}

function evidence({ template, landmarks, breaks }: SkullDrawing, part: string, { move }: PlacedSkull) {
  const ofPart = Object.entries(template.landmarks).filter(([, landmark]) => landmark.part === part);
  const held: PlanePoint[] = [];
  const lost: PlanePoint[] = [];
  for (const [id, { at }] of ofPart) {
    const drawn = landmarks[id];
    const broken = breaks.some((each) => each.landmark === id);
    if (drawn?.basis === 'digitised' && !broken) held.push(drawn.at);
    else if (drawn || broken) lost.push(drawn?.at ?? move(at));
  }
  const ids = new Set(ofPart.map(([id]) => id));
  return { held, lost, ends: breaks.filter((each) => ids.has(each.landmark)).flatMap((each) => each.points) };
}

/** Rings of the region in which the field of the evidence is above zero. */
function restoredRings(
  held: readonly PlanePoint[],
  lost: readonly PlanePoint[],
  ends: readonly PlanePoint[],
  [left, top, right, bottom]: Box,
): PlanePoint[][] {
  const field = fitField([
    ...held.map((at) => ({ at, value: -1 })),
    ...lost.map((at) => ({ at, value: 1 })),
    ...ends.map((at) => ({ at, value: 0 })),
  ]);
  const columns = Math.ceil((right - left) / gridStep);
  const rows = Math.ceil((bottom - top) / gridStep);
  const values = Array.from({ length: columns * rows }, (_, index) =>
    field([
      left + ((index % columns) + 0.5) * gridStep,
      top + (Math.floor(index / columns) + 0.5) * gridStep,
    ]),
  );
  const found = contours().size([columns, rows]).contour(values, 0);
  return found.coordinates.flat().map((ring) =>
    // The last point of a ring repeats the first.
    ring.slice(0, -1).map(([x, y]) => [left + x! * gridStep, top + y! * gridStep] as const),
  );
}
