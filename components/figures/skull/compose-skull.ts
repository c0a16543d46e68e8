import { centroid, isInRing, type PlanePoint } from '../../../analysis/geometry/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { composeAccent } from './accent.ts';
import { linePath } from './compact-path.ts';
import { inkShape, type InkShape } from './ink-shape.ts';
import { inkWeights } from './ink-style.ts';
import { penStroke } from './pen.ts';
import { isRing, placeTemplate, type PlacedPiece, type PlacedSkull } from './place-template.ts';
import { ruleRing } from './ruling.ts';
import type { InkQuality, SkullDrawing } from './skull-drawing.ts';
import { surenessOf } from './sureness.ts';
import { stippleDots } from './stipple.ts';
import { skullTone } from './tone.ts';
import { boxOf, tornRegion, type TornRegion } from './torn-region.ts';
import { drawnRuns, runsWhere, splitRuns } from './trace-edges.ts';

/** A skull as shapes: what is bone, what is restored, where bone ends, and the trait's opening. */
export interface SkullPicture {
  readonly id: string;
  readonly quality: InkQuality;
  readonly bone: readonly InkShape[];
  readonly restored: readonly InkShape[];
  readonly torn: readonly InkShape[];
  readonly accent: readonly InkShape[];
  /** Rings of the restored region of each part that has one, for cutting its bone. */
  readonly cuts: ReadonlyMap<string, readonly (readonly PlanePoint[])[]>;
  readonly placed: PlacedSkull;
  readonly regions: ReadonlyMap<string, TornRegion>;
}

/** What the shapes of one piece are made from. */
export interface PieceScene {
  readonly placed: PlacedPiece;
  readonly region: TornRegion;
  /** Rings of pieces that are drawn later and hide what lies behind. */
  readonly inFront: readonly (readonly PlanePoint[])[];
  readonly quality: InkQuality;
  readonly sureness: (point: PlanePoint) => number;
}

const spacing: Readonly<Record<InkQuality, number>> = { outline: 1.8, hero: 1.1, card: 1.4, mini: 1.8 };
/** How coarse the stipple of each quality is; those without an entry have none. */
const grains: Readonly<Partial<Record<InkQuality, number>>> = { hero: 1, card: 1.5 };
const rulingAngle = -Math.PI / 4;

/**
 * Shapes of a skull in the drawing frame; stipple is for those that have room for it. Bone is cut to what is preserved; restored parts are dashed
 * and ruled where nothing in front of them hides them. Throws where the drawing folds.
 */
export function composeSkull(drawing: SkullDrawing, quality: InkQuality): SkullPicture {
  return composePlaced(drawing, placeTemplate(drawing, spacing[quality]), quality);
}

/** The same from a template that has its place already. */
export function composePlaced(drawing: SkullDrawing, placed: PlacedSkull, quality: InkQuality): SkullPicture {
  const regions = new Map(
    Object.keys(drawing.template.parts).map((part) => [part, tornRegion(drawing, part, placed)]),
  );
  const sureness = surenessOf(drawing);
  const scenes = placed.pieces.map((piece, index): PieceScene => {
    const later = placed.pieces.slice(index + 1).filter(isCover);
    return {
      placed: piece,
      region: regions.get(piece.piece.part)!,
      inFront: later.map((each) => each.points),
      quality,
      sureness,
    };
  });
  const plain = scenes.filter((scene) => scene.placed.piece.kind !== 'opening');
  const openings = scenes.filter((scene) => scene.placed.piece.id === drawing.accent?.piece);
  const grain = grains[quality];
  const tone = skullTone(drawing.template, placed, regions);
  const random = seededRandom(drawing.id, 'dots');
  const dots = grain === undefined ? [] : stippleDots(tone, boxOf(placed), random, grain);
  return {
    id: drawing.id,
    quality,
    bone: [...plain.flatMap(boneShapes), ...dots],
    restored: plain.flatMap(restoredShapes),
    torn: plain.flatMap(tornShapes),
    accent: openings.flatMap((scene) => composeAccent(scene, drawing.accent!.status)),
    cuts: new Map(
      [...regions].filter(([, { rings }]) => rings.length > 0).map(([part, { rings }]) => [part, rings]),
    ),
    placed,
    regions,
  };
}

/** Whether a piece hides what was drawn before it. */
function isCover({ piece }: PlacedPiece): boolean {
  return piece.kind === 'bone' || piece.kind === 'tooth';
}

/** Whether no piece in front hides a point. */
export function isOpen({ inFront }: PieceScene, point: PlanePoint): boolean {
  return !inFront.some((ring) => isInRing(point, ring));
}

function boneShapes(scene: PieceScene): InkShape[] {
  const { placed, region, quality } = scene;
  const { piece } = placed;
  if (piece.kind === 'hole') return holeShape(scene);
  if (piece.kind === 'tooth' && region.isRestored(centroid(placed.points))) return [];
  const weights = inkWeights[quality];
  const cutTo = region.rings.length > 0 && piece.kind !== 'tooth' ? piece.part : undefined;
  const isSeen = (point: PlanePoint) => piece.kind === 'tooth' || !region.isRestored(point);
  if (piece.kind === 'hollow') return [];
  const fill = isRing(piece)
    ? inkShape(fillRole(piece.kind), [linePath(placed.points, 'closed')], cutTo)
    : [];
  if (quality === 'mini' && (piece.kind === 'suture' || piece.kind === 'foramen')) return [];
  const line = isRing(piece)
    ? {
        width: weights.pen * edgeWeight(piece.kind),
        turn: edgeTurn(placed),
        swell: 1,
        ...(piece.kind === 'tooth' ? {} : { sureness: scene.sureness }),
      }
    : { width: weights.pen * (piece.weight ?? 1) * 1.25, turn: 1 as const, swell: 0.2 };
  const strokes = drawnRuns(placed)
    .flatMap((run) => runsWhere(run, isSeen))
    .map((run) => penStroke(run, line));
  return [...fill, ...inkShape(isRing(piece) ? 'pen' : 'soft', strokes)];
}

function fillRole(kind: string): 'bone' | 'socket' | 'tooth' {
  return kind === 'socket' || kind === 'tooth' ? kind : 'bone';
}

function edgeWeight(kind: string): number {
  return kind === 'tooth' ? 0.66 : kind === 'socket' ? 1.05 : 1;
}

/** The edge of a socket has its shadow on the side towards the light. */
function edgeTurn({ piece, turn }: PlacedPiece): 1 | -1 {
  return piece.kind === 'socket' ? (turn === 1 ? -1 : 1) : turn;
}

function holeShape({ placed, region }: PieceScene): InkShape[] {
  const middle = placed.points[0]!;
  if (region.isRestored(middle)) return [];
  const [radiusX, radiusY] = placed.piece.radii!;
  const ring = Array.from({ length: 20 }, (_, step): PlanePoint => {
    const angle = (step * Math.PI) / 10;
    return [middle[0] + radiusX * Math.cos(angle), middle[1] + radiusY * Math.sin(angle)];
  });
  return inkShape('hole', [linePath(ring, 'closed')]);
}

function restoredShapes(scene: PieceScene): InkShape[] {
  const { placed, region, quality } = scene;
  const { kind } = placed.piece;
  if (region.rings.length === 0 || !isRing(placed.piece) || kind === 'hollow') return [];
  const isTooth = kind === 'tooth';
  if (isTooth && !region.isRestored(centroid(placed.points))) return [];
  const isShown = (point: PlanePoint) => (isTooth || region.isRestored(point)) && isOpen(scene, point);
  const dashes = drawnRuns(placed)
    .flatMap((run) => runsWhere(run, isShown))
    .map((run) => linePath(run));
  const weights = inkWeights[quality];
  const ruling =
    kind === 'bone'
      ? ruleRing(placed.points, region.rings, scene.inFront, {
          angleRad: rulingAngle,
          spacing: weights.ruling,
        })
      : '';
  return [...inkShape('ruling', [ruling]), ...inkShape(isTooth ? 'dash-thin' : 'dash', dashes)];
}

function tornShapes(scene: PieceScene): InkShape[] {
  const { placed, region, quality } = scene;
  if (placed.piece.kind !== 'bone') return [];
  const isHere = (point: PlanePoint) => isInRing(point, placed.points) && isOpen(scene, point);
  const pen = { width: inkWeights[quality].pen * 0.85, turn: 1 as const, swell: 0.6 };
  const strokes = region.edges
    .flatMap((edge) => splitRuns(denser(edge), isHere))
    .filter((run) => run.answer)
    .map((run) => penStroke(run.points, pen));
  return inkShape('torn', strokes);
}

/** A line with points between its own, so that it can be cut where bone ends. */
function denser(line: readonly PlanePoint[]): PlanePoint[] {
  return line.flatMap((point, index) => {
    const next = line[index + 1];
    if (!next) return [point];
    return [0, 0.2, 0.4, 0.6, 0.8].map((share): PlanePoint => [
      point[0] + (next[0] - point[0]) * share,
      point[1] + (next[1] - point[1]) * share,
    ]);
  });
}
