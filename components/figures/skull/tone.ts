import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import { cellAt, cellGrid, maskOf, wayTo, type CellGrid, type Mask } from './mask.ts';
import { shadowFall } from './pen.ts';
import type { PlacedPiece, PlacedSkull } from './place-template.ts';
import { boxOf, type TornRegion } from './torn-region.ts';
import type { DrawingTemplate } from '../../../analysis/geometry/index.ts';

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

const gridStep = 0.5;

/**
 * Tone by the light from the upper left: bone darkens towards edges that turn away, under what stands before it, and in
 * hollows below their upper rim; the template's own patches come on top.
 */
export function skullTone(
  template: DrawingTemplate,
  placed: PlacedSkull,
  regions: ReadonlyMap<string, TornRegion>,
): Tone {
  const grid = cellGrid(boxOf(placed), gridStep);
  const layers = placed.pieces
    .filter(({ piece }) => ['bone', 'hollow', 'socket', 'opening', 'tooth'].includes(piece.kind))
    .map((piece): Layer => ({ ...piece, mask: maskOf(piece.points, grid) }));
  const patches = template.shading.map((patch): Patch => ({ ...patch, at: placed.move(patch.at) }));
  return (point) => {
    const cell = cellAt(grid, point[0], point[1]);
    if (cell < 0) return 0;
    const top = layers.findLastIndex(({ mask }) => mask[cell] === 1);
    const layer = layers[top];
    if (!layer || layer.piece.kind === 'tooth' || layer.piece.kind === 'opening') return 0;
    if (regions.get(layer.piece.part)!.isRestored(point)) return 0;
    if (layer.piece.kind === 'socket') return socketTone(layer, grid, point);
    const bone = boneBelow(layers, top, cell);
    if (!bone) return 0;
    const cavity = layer.piece.kind === 'hollow' ? hollowTone(layer, grid, point) : 0;
    return (
      boneTone(bone, grid, point) +
      cavity +
      castTone(layers, top, grid, point) +
      patchTone(patches, bone.piece.id, point)
    );
  };
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
  const reach = Math.min(5.2, 1.3 + across * 0.12);
  const back = wayTo(mask, grid, point, [0.97, 0.24], { wanted: 0, most: 12 });
  const rear = piece.undrawn ? 0 : 0.32 * Math.exp(-back / 2.8);
  return 0.82 * Math.exp(-toShadow / reach) + rear;
}

/** Darkest under the rim that the light comes over. */
function socketTone({ mask }: Layer, grid: CellGrid, point: PlanePoint): number {
  const rim = wayTo(mask, grid, point, [-shadowFall[0], -shadowFall[1]], { wanted: 0, most: 22 });
  const floor = wayTo(mask, grid, point, shadowFall, { wanted: 0, most: 10 });
  return 0.42 + 0.62 * Math.exp(-rim / 6) - 0.2 * Math.exp(-floor / 2.5);
}

function hollowTone({ mask }: Layer, grid: CellGrid, point: PlanePoint): number {
  const edge = { wanted: 0 as const, most: 40 };
  const below = wayTo(mask, grid, point, [0.1, 1], edge);
  const front = wayTo(mask, grid, point, [-1, 0], edge);
  return 0.1 + 0.6 * Math.exp(-below / 7) + 0.42 * Math.exp(-front / 7.5);
}

/** Shadow of pieces drawn later that stand towards the light, and the turn of bone into an opening or a socket. */
function castTone(layers: readonly Layer[], top: number, grid: CellGrid, point: PlanePoint): number {
  let tone = 0;
  for (const { piece, mask } of layers.slice(top + 1)) {
    if (piece.kind === 'bone')
      tone += 0.62 * fade(wayTo(mask, grid, point, [-0.3, -0.95], { wanted: 1, most: 9 }), 9, 2.8);
    if (piece.kind === 'opening')
      tone += 0.66 * fade(wayTo(mask, grid, point, [-1, -0.2], { wanted: 1, most: 10 }), 10, 3.2);
    if (piece.kind === 'socket')
      tone += 0.42 * fade(wayTo(mask, grid, point, [-0.7, -0.7], { wanted: 1, most: 6 }), 6, 2);
    if (piece.kind === 'tooth')
      tone += 0.25 * fade(wayTo(mask, grid, point, [-0.2, -1], { wanted: 1, most: 4 }), 4, 1.4);
  }
  return tone;
}

function fade(way: number, most: number, reach: number): number {
  return way >= most ? 0 : Math.exp(-way / reach);
}

function patchTone(patches: readonly Patch[], piece: string, [x, y]: PlanePoint): number {
  return patches
    .filter((patch) => patch.piece === piece)
    .reduce((sum, { at, radii, strength }) => {
      const spread = ((x - at[0]) / radii[0]) ** 2 + ((y - at[1]) / radii[1]) ** 2;
      return sum + strength * Math.exp(-spread);
    }, 0);
}
