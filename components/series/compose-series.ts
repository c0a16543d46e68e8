import type { CompiledDrawing } from '../../scripts/compile/contract.ts';
import { plateData, type ChartUnit } from '../figures/scene/plate-data.ts';
import { barLengthMm } from '../figures/scene/scale-bar.ts';
import { drawingsOf } from '../figures/skull-figures.ts';
import type { LineageView } from '../lineage/view.ts';
import { layOutSeries } from './series-layout.ts';

/** Every measured line equally long, or every skull in real millimetres. */
export type SeriesScale = 'line' | 'size';
export const seriesScales: readonly SeriesScale[] = ['line', 'size'];

/** One skull of the series, with its number by age; `left` and `top` are where the corner of its box stands. */
export interface PlacedSkull {
  readonly taxon: string;
  readonly number: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Pixels in one unit of the drawing frame. */
  readonly scale: number;
  /** Left and top of its box in the drawing frame. */
  readonly corner: readonly [number, number];
  /** Its age on the axis. */
  readonly middle: number;
}

/** The series of one lineage, in pixels. */
export interface Series {
  readonly width: number;
  readonly height: number;
  readonly axisTop: number;
  readonly skulls: readonly PlacedSkull[];
  /** Drawn animals whose size nobody recorded. */
  readonly without: readonly string[];
  readonly units: readonly (ChartUnit & { readonly left: number; readonly right: number })[];
  readonly ticks: readonly { readonly ageMa: number; readonly x: number }[];
  /** Length of the scale bar in pixels and mm, where sizes are true. */
  readonly bar?: { readonly pixels: number; readonly mm: number };
}

const width = 1240;
const axisHeight = 54;
const edge = 88;
/** Width of a skull at one scale, and of the largest at true size. */
const skullWidth = { line: 112, size: 168 } as const;
const gap = 14;
const headroom = 18;

/** The series at one scale; undefined where fewer than two skulls are drawn. */
export function findSeries(view: LineageView, scale: SeriesScale): Series | undefined {
  const data = plateData(view.lineage, view.trait, view.language);
  const placed = new Map(data.taxa.map(({ id, placedMa }) => [id, placedMa]));
  const drawn = drawingsOf(view)
    .filter(({ taxon }) => placed.has(taxon))
    .sort((one, other) => placed.get(other.taxon)! - placed.get(one.taxon)!);
  const sized = drawn.filter(({ mmPerUnit }) => scale === 'line' || mmPerUnit !== undefined);
  if (sized.length < 2) return undefined;
  const oldestMa = Math.max(10, Math.ceil(data.oldestMa));
  const across = (ageMa: number) => edge + (1 - ageMa / oldestMa) * (width - 2 * edge);
  const unitOf = unitScale(sized, scale);
  const boxes = sized.map((drawing): SkullBox => {
    const { left, top, ...size } = boxOf(drawing);
    const unit = unitOf(drawing.mmPerUnit);
    return {
      taxon: drawing.taxon,
      number: drawn.indexOf(drawing) + 1,
      width: size.width * unit,
      height: size.height * unit,
      scale: unit,
      corner: [left, top],
      middle: across(placed.get(drawing.taxon)!),
    };
  });
  return {
    ...standOnAxis(boxes),
    without: drawn.filter((drawing) => !sized.includes(drawing)).map(({ taxon }) => taxon),
    units: data.epochs
      .filter(({ to }) => to < oldestMa)
      .map((unit) => ({ ...unit, left: across(Math.min(unit.from, oldestMa)), right: across(unit.to) })),
    ticks: ticksTo(oldestMa).map((ageMa) => ({ ageMa, x: across(ageMa) })),
    ...(scale === 'size' && barOf(unitOf(1))),
  };
}

/** A skull of the series before it has found its place. */
type SkullBox = Omit<PlacedSkull, 'left' | 'top'>;

/** Skulls in lanes above the axis, each over its age and none over another; and the room that they take. */
function standOnAxis(boxes: readonly SkullBox[]): Pick<Series, 'width' | 'height' | 'axisTop' | 'skulls'> {
  const { places, height } = layOutSeries(
    boxes.map((box) => ({ ...box, height: box.height + headroom })),
    gap,
  );
  const axisTop = Math.round(height + 8);
  const standing = new Map(places.map((place) => [place.taxon, place]));
  const skulls = boxes.map((box): PlacedSkull => {
    const { left, rise } = standing.get(box.taxon)!;
    return { ...box, left, top: axisTop - gap - rise - box.height };
  });
  return { width, height: axisTop + axisHeight, axisTop, skulls };
}

/** Room for the scale bar, in pixels. */
const barRoom = 160;

function barOf(pixelsPerMm: number): Pick<Series, 'bar'> {
  const mm = barLengthMm(barRoom / pixelsPerMm);
  return mm === undefined ? {} : { bar: { pixels: mm * pixelsPerMm, mm } };
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Room for teeth and edges beyond the landmarks, in units of the frame. */
const rim = 6;

function boxOf({ points }: CompiledDrawing): Box {
  const places = Object.values(points).map(({ at }) => at);
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs) - rim, Math.min(...ys) - rim];
  return { left, top, width: Math.max(...xs) + rim - left, height: Math.max(...ys) + rim - top };
}

/** Pixels in a unit of the frame: the same for all, or by the millimetres that it stands for. */
function unitScale(
  drawings: readonly CompiledDrawing[],
  scale: SeriesScale,
): (mmPerUnit: number | undefined) => number {
  const widest = Math.max(
    ...drawings.map((drawing) => boxOf(drawing).width * (scale === 'size' ? (drawing.mmPerUnit ?? 1) : 1)),
  );
  const unit = skullWidth[scale] / widest;
  return (mmPerUnit) => (scale === 'size' ? unit * mmPerUnit! : unit);
}

function ticksTo(oldestMa: number): number[] {
  const step = oldestMa > 30 ? 10 : 5;
  return Array.from({ length: Math.floor(oldestMa / step) + 1 }, (_, index) => index * step);
}
