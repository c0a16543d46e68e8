import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/index.ts';
import type { Random } from '../../../analysis/random/index.ts';
import type { Box } from './torn-region.ts';

/** Length of one splinter along a broken edge, and how far its tip stands out, in units of the trait. */
const splinter = 4.8;
const reach = 2.3;

/** Stops nearer than this to a recorded point of a break make way for it; points farther from a ring are not of it. */
const clearance = 3.4;

interface Stop {
  readonly at: PlanePoint;
  readonly border: boolean;
  /** Place along the ring. */
  readonly order: number;
}

/**
 * A ring with splinters: sampled anew, its points set off in turn to either side, except along the border of the box,
 * which is no edge of bone. Points where a break was recorded are taken as they are. Also gives the edges between the
 * borders.
 */
export function roughenRing(
  ring: readonly PlanePoint[],
  ends: readonly PlanePoint[],
  box: Box,
  random: Random,
): { ring: PlanePoint[]; edges: PlanePoint[][] } {
  const stops = sampleRing(ring, box);
  const rough = stops.map((stop, index) =>
    stop.border ? stop : { ...stop, at: offset(stops, index, random) },
  );
  const isClear = (_: Stop, index: number) =>
    stops[index]!.border || ends.every((end) => distanceBetween(stops[index]!.at, end) > clearance);
  const through = [...rough.filter(isClear), ...endStops(ring, ends)].sort(
    (one, other) => one.order - other.order,
  );
  return { ring: through.map(({ at }) => at), edges: edgesOf(through) };
}

function sampleRing(ring: readonly PlanePoint[], box: Box): Stop[] {
  const stops: Stop[] = [];
  let way = 0;
  ring.forEach((at, order) => {
    const before = ring[(order + ring.length - 1) % ring.length]!;
    way += distanceBetween(before, at);
    const border = isOnBorder(at, box);
    if (!border && stops.length > 0 && !stops.at(-1)!.border && way < splinter) return;
    way = 0;
    stops.push({ at, border, order });
  });
  return stops;
}

/** Recorded points of a break, each where the ring passes it. */
function endStops(ring: readonly PlanePoint[], ends: readonly PlanePoint[]): Stop[] {
  return ends.flatMap((at) => {
    const gaps = ring.map((point) => distanceBetween(point, at));
    const order = gaps.indexOf(Math.min(...gaps));
    return order >= 0 && gaps[order]! < clearance ? [{ at, border: false, order }] : [];
  });
}

function isOnBorder([x, y]: PlanePoint, [left, top, right, bottom]: Box): boolean {
  const slack = 2;
  return x < left + slack || x > right - slack || y < top + slack || y > bottom - slack;
}

function offset(stops: readonly Stop[], index: number, random: Random): PlanePoint {
  const before = stops[(index + stops.length - 1) % stops.length]!.at;
  const after = stops[(index + 1) % stops.length]!.at;
  const length = distanceBetween(before, after) || 1;
  const out = (index % 2 === 0 ? 1 : -1) * reach * (0.35 + 0.65 * random());
  const along = (random() - 0.5) * splinter * 0.4;
  const [tangentX, tangentY] = [(after[0] - before[0]) / length, (after[1] - before[1]) / length];
  const [x, y] = stops[index]!.at;
  return [x - tangentY * out + tangentX * along, y + tangentX * out + tangentY * along];
}

function edgesOf(stops: readonly Stop[]): PlanePoint[][] {
  const start = stops.findIndex(({ border }) => border);
  // A ring that meets no border is one closed edge.
  if (start < 0) return stops.length > 1 ? [[...stops.map(({ at }) => at), stops[0]!.at]] : [];
  const turned = [...stops.slice(start), ...stops.slice(0, start)];
  const edges: PlanePoint[][] = [[]];
  for (const { at, border } of turned) {
    if (!border) edges.at(-1)!.push(at);
    else if (edges.at(-1)!.length > 0) edges.push([]);
  }
  return edges.filter((edge) => edge.length > 1);
}
