import type { DrawingTemplate, PieceKind, PlanePoint } from '../../../analysis/geometry/index.ts';
import { cellAt, cellGrid, maskOf, wayTo, type CellGrid, type Mask } from './mask.ts';
import { shadowFall } from './pen.ts';
import type { PlacedPiece, PlacedSkull } from './place-template.ts';
import { boxOf, type TornRegion } from './torn-region.ts';

/** Tone of a skull at a point: 0 is bare paper, 1 as dark as stipple gets. Restored parts and all but bone have none. */
export type Tone = (point: PlanePoint) => number;

interface Layer extends PlacedPiece {
  readonly mask: Mask;
}

interface Patch {
  readonly piece: string;
  readonly at: PlanePoint;
  readonly radii: PlanePoint;
  readonly strength: number;
}

/** What a tone is worked out from: the layers from the back to the front, on one grid. */
interface Scene {
  readonly grid: CellGrid;
  readonly layers: readonly Layer[];
  /** The front layer in each cell; -1 without any. */
  readonly cover: Int8Array;
  /** The same where it is bone or a socket that is preserved, else -1. */
  readonly front: Int8Array;
  readonly patches: readonly Patch[];
}

const maskStep = 0.5;
const toneStep = 1;

/**
 * Tone by the light from the upper left: bone darkens towards edges that turn away, under what stands before it, and in
 * hollows below their upper rim; the template's own patches come on top. Worked out once a unit and blended between.
 */
export function skullTone(
  template: DrawingTemplate,
  placed: PlacedSkull,
  regions: ReadonlyMap<string, TornRegion>,
): Tone {
  const box = boxOf(placed);
  const scene = sceneOf(template, placed, regions, cellGrid(box, maskStep));
  const coarse = cellGrid(box, toneStep);
  const tones = Float64Array.from({ length: coarse.columns * coarse.rows }, (_, cell) =>
    toneAt(scene, middleOf(coarse, cell)),
  );
  return (point) => (frontAt(scene, point) < 0 ? 0 : blend(tones, coarse, point));
}

function sceneOf(
  template: DrawingTemplate,
  placed: PlacedSkull,
  regions: ReadonlyMap<string, TornRegion>,
  grid: CellGrid,
): Scene {
  const layers = placed.pieces
    .filter(({ piece }) => ['bone', 'hollow', 'socket', 'opening', 'tooth'].includes(piece.kind))
    .map((piece): Layer => ({ ...piece, mask: maskOf(piece.points, grid) }));
  const restored = new Map(
    [...regions].map(([part, { rings }]) => [part, rings.map((ring) => maskOf(ring, grid))]),
  );
  const cover = new Int8Array(grid.columns * grid.rows).fill(-1);
  layers.forEach(({ mask }, index) => mask.forEach((inside, cell) => inside && (cover[cell] = index)));
  const front = cover.map((top, cell) => {
    if (top < 0) return -1;
    const { kind, part } = layers[top]!.piece;
    const lost = restored.get(part)!.reduce((odd, mask) => odd !== (mask[cell] === 1), false);
    return lost || kind === 'tooth' || kind === 'opening' ? -1 : top;
  });
  const patches = template.shading.map((patch): Patch => ({ ...patch, at: placed.move(patch.at) }));
  return { grid, layers, cover, front, patches };
}

function frontAt({ grid, front }: Scene, [x, y]: PlanePoint): number {
  const cell = cellAt(grid, x, y);
  return cell < 0 ? -1 : front[cell]!;
}

function middleOf({ left, top, step, columns }: CellGrid, cell: number): PlanePoint {
  return [left + ((cell % columns) + 0.5) * step, top + (Math.floor(cell / columns) + 0.5) * step];
}

/** Mean of the four cells around a point by nearness; cells without tone, beyond an edge, do not count. */
function blend(
  tones: Float64Array,
  { left, top, step, columns, rows }: CellGrid,
  [x, y]: PlanePoint,
): number {
  const [across, down] = [(x - left) / step - 0.5, (y - top) / step - 0.5];
  const [column, row] = [Math.floor(across), Math.floor(down)];
  let [sum, weights] = [0, 0];
  for (const [right, low] of corners) {
    const [at, on] = [column + right, row + low];
    if (at < 0 || on < 0 || at >= columns || on >= rows) continue;
    const tone = tones[on * columns + at]!;
    const weight = (1 - Math.abs(across - at)) * (1 - Math.abs(down - on));
    if (tone <= 0) continue;
    sum += tone * weight;
    weights += weight;
  }
  return weights > 0 ? sum / weights : 0;
}

const corners = [
  [0, 0],
  [1, 0],
  [0, 1],
  [1, 1],
] as const;

function toneAt(scene: Scene, point: PlanePoint): number {
  const { grid, layers, patches } = scene;
  const top = frontAt(scene, point);
  const layer = layers[top];
  if (!layer) return 0;
  if (layer.piece.kind === 'socket') return socketTone(layer, grid, point);
  const bone = boneBelow(layers, top, cellAt(grid, point[0], point[1]));
  if (!bone) return 0;
  const cavity = layer.piece.kind === 'hollow' ? hollowTone(layer, grid, point) : 0;
  return (
    boneTone(bone, grid, point) +
    cavity +
    castTone(scene, top, point) +
    patchTone(patches, bone.piece.id, point)
  );
}

/** The bone that a cell shows, through a hollow or not. */
function boneBelow(layers: readonly Layer[], top: number, cell: number): Layer | undefined {
  return layers.slice(0, top + 1).findLast(({ piece, mask }) => piece.kind === 'bone' && mask[cell] === 1);
}

/** A large piece is round; a narrow one, such as an arch, turns away fast. */
function boneTone({ mask, piece }: Layer, grid: CellGrid, point: PlanePoint): number {
  const edge = { wanted: 0 as const, most: 26 };
  const toShadow = wayTo(mask, grid, point, shadowFall, edge);
  const toLight = wayTo(mask, grid, point, [-shadowFall[0], -shadowFall[1]], edge);
  const across = toShadow + toLight;
  const reach = Math.min(5.2, 1.7 + across * 0.11);
  const back = wayTo(mask, grid, point, [0.97, 0.24], { wanted: 0, most: 12 });
  const rear = piece.undrawn ? 0 : 0.32 * Math.exp(-back / 2.8);
  return 0.82 * Math.exp(-toShadow / reach) + rear;
}

/** Darkest under the rim that the light comes over. */
function socketTone({ mask }: Layer, grid: CellGrid, point: PlanePoint): number {
  const rim = wayTo(mask, grid, point, [-shadowFall[0], -shadowFall[1]], { wanted: 0, most: 22 });
  const floor = wayTo(mask, grid, point, shadowFall, { wanted: 0, most: 10 });
  return 0.3 + 0.75 * Math.exp(-rim / 7) - 0.12 * Math.exp(-floor / 2.5);
}

function hollowTone({ mask }: Layer, grid: CellGrid, point: PlanePoint): number {
  const edge = { wanted: 0 as const, most: 40 };
  const below = wayTo(mask, grid, point, [0.1, 1], edge);
  const front = wayTo(mask, grid, point, [-1, 0], edge);
  return 0.1 + 0.6 * Math.exp(-below / 7) + 0.42 * Math.exp(-front / 7.5);
}

/** What stands before bone darkens it: the kind, the way to look for it, how far, how fast it fades, and how strong it is. */
const casts: readonly {
  kind: PieceKind;
  towards: PlanePoint;
  most: number;
  reach: number;
  strength: number;
}[] = [
  { kind: 'bone', towards: [-0.3, -0.95], most: 12, reach: 3.4, strength: 0.85 },
  { kind: 'opening', towards: [-1, -0.2], most: 10, reach: 3.2, strength: 0.66 },
  { kind: 'socket', towards: [-0.7, -0.7], most: 6, reach: 2, strength: 0.42 },
  { kind: 'tooth', towards: [-0.2, -1], most: 4, reach: 1.4, strength: 0.25 },
];

/** Shadow of pieces in front that stand towards the light, and the turn of bone into an opening or a socket. */
function castTone({ grid, layers, cover }: Scene, top: number, [x, y]: PlanePoint): number {
  return casts.reduce((tone, { kind, towards, most, reach, strength }) => {
    for (let way = 0.5; way < most; way += 0.5) {
      const cell = cellAt(grid, x + towards[0] * way, y + towards[1] * way);
      const other = cell < 0 ? -1 : cover[cell]!;
      if (other > top && layers[other]!.piece.kind === kind) return tone + strength * Math.exp(-way / reach);
    }
    return tone;
  }, 0);
}

function patchTone(patches: readonly Patch[], piece: string, [x, y]: PlanePoint): number {
  return patches
    .filter((patch) => patch.piece === piece)
    .reduce((sum, { at, radii, strength }) => {
      const spread = ((x - at[0]) / radii[0]) ** 2 + ((y - at[1]) / radii[1]) ** 2;
      return sum + strength * Math.exp(-spread);
    }, 0);
}
