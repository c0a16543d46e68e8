import { overlap, type Box } from './label-slots.ts';
import type { PlateLayout } from './layout.ts';
import type { PlateData, PlateTaxon } from './plate-data.ts';
import type { Scales } from './scales.ts';
import { line, text, type Mark } from './scene.ts';

/** Small pictures of skulls that a plate may show, dearest first, all in one box of `aspect` (width over height). */
export interface SmallSkulls {
  readonly aspect: number;
  readonly pictures: readonly { readonly taxon: string; readonly href: string }[];
}

/** A small skull with its place on the plate, in pixels. */
export interface PlacedSkull extends Box {
  readonly taxon: PlateTaxon;
  readonly href: string;
}

/** Share of a picture's height in which the name stands beneath it. */
const nameRoom = 0.22;
/** Fewer skulls than this say nothing of a series. */
const fewest = 3;

/**
 * Stands small skulls beside the chart, each with its middle at its true age and none over another or over what `taken` keeps:
 * dearest first, each in the column where its nearest neighbour in time is farthest. One that finds no room is left to the
 * chart. Empty where the layout has no columns or where too few would stand.
 */
export function placeSmallSkulls(
  skulls: SmallSkulls,
  data: PlateData,
  layout: PlateLayout,
  scales: Scales,
  taken: readonly Box[],
): PlacedSkull[] {
  const room = layout.skulls;
  if (!room) return [];
  const height = room.width / skulls.aspect;
  const placed: PlacedSkull[] = [];
  for (const { taxon: id, href } of skulls.pictures) {
    const taxon = data.taxa.find((each) => each.id === id);
    if (!taxon) continue;
    const middle = scales.y(taxon.placedMa);
    const [top, bottom] = [middle - height / 2, middle + height * (0.5 + nameRoom)];
    if (bottom > layout.height) continue;
    const free = room.columns
      .map((left): PlacedSkull => ({ taxon, href, left, right: left + room.width, top, bottom }))
      .filter((box) => ![...taken, ...placed].some((other) => overlap(box, other)));
    const [best] = free.sort((one, other) => clearance(other, placed) - clearance(one, placed));
    if (best) placed.push(best);
  }
  return placed.length < fewest ? [] : placed;
}

/** How far the nearest skull of the same column stands, in pixels of time. */
function clearance(box: PlacedSkull, placed: readonly PlacedSkull[]): number {
  const same = placed.filter(({ left }) => left === box.left).map(({ top }) => Math.abs(top - box.top));
  return Math.min(Infinity, ...same);
}

/** The skulls with their names, on age lines that run on from the chart. */
export function smallSkullMarks(
  placed: readonly PlacedSkull[],
  layout: PlateLayout,
  scales: Scales,
  taken: readonly Box[],
): Mark[] {
  const [first] = placed;
  if (!first) return [];
  const right = Math.max(...placed.map((skull) => skull.right));
  const ages = scales.ageTicks
    .map((age) => scales.y(age))
    .filter((y) => !taken.some((box) => box.top < y && y < box.bottom));
  return [
    ...ages.map((y): Mark => ({
      layer: 'grid',
      role: 'age-line',
      shape: line(layout.chart.right, y, right, y),
    })),
    ...placed.flatMap((skull) => marksOf(skull, layout)),
  ];
}

function marksOf({ taxon, href, left, right, top, bottom }: PlacedSkull, layout: PlateLayout): Mark[] {
  const size = layout.fontSize;
  const height = (bottom - top) / (1 + nameRoom);
  const short = taxon.name.replace(/^(\p{L})\p{L}+ /u, '$1. ');
  const letters = Math.floor((right - left) / (size * 0.46));
  const name = short.length > letters ? `${[...short].slice(0, letters - 1).join('')}…` : short;
  const of = { layer: 'small-skulls', datum: taxon.id };
  return [
    {
      ...of,
      role: 'small-skull',
      shape: { kind: 'picture', href, x: left, y: top, width: right - left, height },
    },
    {
      ...of,
      role: 'taxon-name',
      shape: text((left + right) / 2, top + height + size * 0.6, size, name, 'middle', 'name'),
    },
  ];
}
