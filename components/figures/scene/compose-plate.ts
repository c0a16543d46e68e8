import { branchMarks, drawnBranches } from './branches.ts';
import { column } from './column.ts';
import { focusMarks, type SkullAnchors } from './focus.ts';
import { intervalMarks } from './interval.ts';
import { key, keyBox, type KeyWords } from './key.ts';
import { nameLabels } from './labels.ts';
import type { MeasureWords } from './measure-lines.ts';
import type { PlateLayout } from './layout.ts';
import type { PlateData } from './plate-data.ts';
import { ribbonMarks, type Ribbon } from './ribbons.ts';
import { ruler, type RulerWords } from './ruler.ts';
import { overlap, type Box } from './label-slots.ts';
import { plateScales, type Scales } from './scales.ts';
import { text, type Mark, type Scene } from './scene.ts';
import { placeSmallSkulls, smallSkullMarks, type PlacedSkull, type SmallSkulls } from './small-skulls.ts';
import { cutBoxes, sliceMarks, wordBoxes } from './slice.ts';
import { statusMarks } from './status-marks.ts';
import { trendMarks } from './trend-band.ts';

/** All words on a plate, made for the page's language before. */
export interface PlateWords {
  ruler: RulerWords;
  key: KeyWords;
  /** Words beside the two lengths that make a share. */
  measure(taxon: string): MeasureWords;
  /** The start of the ruler on a broken skull. */
  breakWord: string;
  /** Printed value of each animal. */
  value(taxon: string): string;
  /** Caption of a slice, with its count. */
  slice(ageMa: number): string;
  /** Caption of an interval, with its count. */
  interval(fromMa: number, toMa: number): string;
  /** The trait's meaning, broken into lines of the title. */
  meaning: string[];
}

export interface PlateRequest {
  data: PlateData;
  layout: PlateLayout;
  words: PlateWords;
  /** Where the skull of each animal is read, if it is drawn. */
  anchors: ReadonlyMap<string, SkullAnchors>;
  /** Ages at which steps slice the tree. */
  slices: readonly number[];
  /** Intervals that steps show, older end first. */
  intervals?: readonly (readonly [number, number])[];
  /** Ribbons of branches that steps show. */
  ribbons?: readonly Ribbon[];
  /** Small pictures of skulls to stand beside the chart. */
  skulls?: SmallSkulls | undefined;
}

/** The whole plate as a flat list of marks, back to front. Pure: the same request gives the same scene. */
export function composePlate(request: PlateRequest): Scene {
  const { data, layout: given, words, anchors, slices, intervals = [], ribbons = [] } = request;
  const scales = plateScales(data, given);
  const { layout, skulls } = withSkulls(forCount(given, data.taxa.length), request, scales);
  const placed = statusMarks(data, layout, scales);
  // Without a single value no line of descent has a place across the plate; the tree of relatives stands by itself.
  const branches = data.values.length > 0 ? data.branches : [];
  const drawn = drawnBranches(branches, placed, scales, layout.markScale);
  const focus = placed.flatMap((mark) =>
    focusMarks(mark, anchors.get(mark.taxon.id), data, layout, scales, {
      value: words.value(mark.taxon.id),
      breakWord: words.breakWord,
      measure: words.measure(mark.taxon.id),
    }),
  );
  const stretches = intervals.flatMap((ends) => intervalMarks(ends, layout, scales, words.interval(...ends)));
  const cuts = slices.flatMap((age) => sliceMarks(data, drawn, layout, scales, age, words.slice(age)));
  const carried = focus.filter((mark) => mark.role === 'carry');
  const rest = focus.filter((mark) => mark.role !== 'carry');
  return {
    width: layout.width,
    height: layout.height,
    marks: [
      ...column(data, layout, scales),
      ...title(data, layout, words.meaning),
      ...trendMarks(data, layout, scales),
      ...ribbonMarks(ribbons, scales),
      ...stretches,
      ...branchMarks(drawn),
      ...carried,
      ...cuts,
      ...inferredFirst(placed).flatMap((mark) => mark.marks),
      ...nameLabels(placed, drawn, layout, cutBoxes(cuts)),
      ...skulls,
      ...key(layout, words.key, wordBoxes([...stretches, ...cuts])),
      ...rest,
      ...ruler(data, layout, scales, words.ruler),
    ],
  };
}

/** How far the key may move up or down, in pixels: little by little, so that it stays where it is if nothing is won. */
const keyMoves = Array.from({ length: 45 }, (_, index) => (index < 10 ? -3 * index : 4 * (index - 9)));

/** The layout with its key where most small skulls find room at their ages, and their marks. */
function withSkulls(layout: PlateLayout, { data, words, skulls }: PlateRequest, scales: Scales) {
  const place = layout.key;
  if (!skulls || !place || !layout.skulls) return { layout, skulls: [] };
  let best: { layout: PlateLayout; placed: PlacedSkull[]; taken: Box[] } | undefined;
  for (const move of keyMoves) {
    const moved = { ...layout, key: { ...place, y: place.y + move } };
    const taken = [...layout.skulls.kept, keyBox(moved, words.key)!];
    if (layout.skulls.kept.some((box) => overlap(box, taken.at(-1)!))) continue;
    const placed = placeSmallSkulls(skulls, data, moved, scales, taken);
    if (placed.length > (best?.placed.length ?? 0)) best = { layout: moved, placed, taken };
  }
  if (!best) return { layout, skulls: [] };
  return { layout: best.layout, skulls: smallSkullMarks(best.placed, best.layout, scales, best.taken) };
}

/** More animals than this have smaller marks, so that they are told apart and leave room for names. */
const manyAnimals = 60;

function forCount(layout: PlateLayout, count: number): PlateLayout {
  return count > manyAnimals ? { ...layout, markScale: layout.markScale * 0.65 } : layout;
}

/** Ruled boxes lie under discs, so that a wide interval never covers a measurement. */
function inferredFirst<T extends { taxon: { status: string } }>(placed: readonly T[]): T[] {
  return [...placed].sort(
    (a, b) => Number(b.taxon.status === 'inferred') - Number(a.taxon.status === 'inferred'),
  );
}

function title(data: PlateData, layout: PlateLayout, meaning: readonly string[]): Mark[] {
  const place = layout.title;
  if (!place) return [];
  const size = layout.fontSize;
  return [
    { layer: 'title', role: 'trait-name', shape: text(place.x, place.y, size * 1.5, data.label) },
    ...meaning.map((content, index): Mark => ({
      layer: 'title',
      role: 'trait-meaning',
      shape: text(place.x, place.y + size * (1.7 + index * 1.35), size, content),
    })),
  ];
}
