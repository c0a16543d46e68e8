import {
  applySimilarity,
  applyWarp,
  findSimilarity,
  fitTemplate,
  ringArea,
  templateShape,
  traceCurve,
  type CurveCourse,
  type PlanePoint,
  type Polyline,
  type Shape,
  type TemplatePiece,
  type TemplateStop,
} from '../../../analysis/geometry/index.ts';
import type { SkullDrawing } from './skull-drawing.ts';

/** A drawing's landmarks stand where the value says to within this many units of the trait. */
const standingTolerance = 1e-6;

/** A piece of the template in its place on one animal. A hole has only its middle. */
export interface PlacedPiece extends Polyline {
  readonly piece: TemplatePiece;
  /** 1 where the ring runs clockwise as seen, -1 where it runs the other way; 1 for lines. */
  readonly turn: 1 | -1;
}

/** A template that has taken the shape of one animal. */
export interface PlacedSkull {
  readonly pieces: readonly PlacedPiece[];
  /** Where a point of the template stands on this animal. */
  readonly move: (point: PlanePoint) => PlanePoint;
}

/** A skull that would turn over on itself between two landmarks; their outline can still be shown. */
export class SkullFolds extends Error {
  readonly between: readonly [string, string];
  constructor(id: string, between: readonly [string, string]) {
    super(`the drawing of ${id} folds between ${between[0]} and ${between[1]}`);
    this.between = between;
  }
}

/**
 * Gives a template the shape of an animal by a chain of short splines, its curves traced at most `spacing` units
 * apart. Throws `SkullFolds` where bone would fold, and where a landmark of the trait does not stand at its value.
 */
export function placeTemplate(drawing: SkullDrawing, spacing: number): PlacedSkull {
  const { template } = drawing;
  const from = templateShape(template);
  const fit = fitTemplate(
    template,
    new Map(Object.entries(drawing.landmarks).map(([id, { at }]) => [id, at])),
  );
  if ('foldsBetween' in fit) throw new SkullFolds(drawing.id, fit.foldsBetween);
  const move = (point: PlanePoint) => applyWarp(fit.warp, point);
  requireStanding(drawing, from, move);
  const place = (stop: TemplateStop) => move(typeof stop === 'string' ? from.get(stop)! : stop);
  return { pieces: template.pieces.map((piece) => placePiece(piece, place, spacing)), move };
}

function placePiece(
  piece: TemplatePiece,
  place: (stop: TemplateStop) => PlanePoint,
  spacing: number,
): PlacedPiece {
  if (piece.kind === 'hole') return { piece, points: [place(piece.at!)], corners: [0], turn: 1 };
  const course = piece.kind === 'tooth' ? toothCourse(piece, place) : movedCourse(piece, place);
  const line = traceCurve(course, piece.kind === 'tooth' ? spacing * 0.7 : spacing);
  return { piece, ...line, turn: isRing(piece) && ringArea(line.points) < 0 ? -1 : 1 };
}

function movedCourse(piece: TemplatePiece, place: (stop: TemplateStop) => PlanePoint): CurveCourse {
  return piece.through!.map((stop) => (stop === 'corner' ? stop : place(stop)));
}

/**
 * A tooth keeps its form: it is moved, turned and scaled as its base is, from the first stop to the last corner, where
 * the warp of the jaw around it would lean it over.
 */
function toothCourse(piece: TemplatePiece, place: (stop: TemplateStop) => PlanePoint): CurveCourse {
  const stops = piece.through!;
  const base = [stops[0]!, stops[stops.lastIndexOf('corner') - 1]].filter(isPlace);
  const fit = findSimilarity(base, base.map(place));
  if (!fit || !stops.every((stop) => stop === 'corner' || isPlace(stop))) return movedCourse(piece, place);
  return stops.map((stop) => (isPlace(stop) ? applySimilarity(fit, stop) : 'corner'));
}

function isPlace(stop: TemplateStop | undefined): stop is PlanePoint {
  return stop !== undefined && typeof stop !== 'string';
}

/** Whether a piece is a closed ring, not a line on bone. */
export function isRing({ kind }: TemplatePiece): boolean {
  return kind !== 'suture' && kind !== 'crest' && kind !== 'foramen' && kind !== 'hole';
}

function requireStanding(
  { id, measured }: SkullDrawing,
  from: Shape,
  move: (point: PlanePoint) => PlanePoint,
): void {
  for (const { landmark, value } of measured) {
    const start = from.get(landmark);
    if (!start) throw new Error(`the template of ${id} has no landmark ${landmark}`);
    const [x] = move(start);
    if (!(Math.abs(x - value) < standingTolerance))
      throw new Error(`${landmark} of ${id} stands at ${Number(x.toFixed(4))}, not at its value ${value}`);
  }
}
