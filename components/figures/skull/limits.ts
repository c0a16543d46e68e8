import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/index.ts';
import { linePath } from './compact-path.ts';
import { composeSkull } from './compose-skull.ts';
import { inkShape, type InkShape } from './ink-shape.ts';
import { placeTemplate, type PlacedPiece } from './place-template.ts';
import type { SkullDrawing } from './skull-drawing.ts';
import { drawnRuns, runsWhere } from './trace-edges.ts';

/** A restoration at one end of its interval. */
export interface LimitShape {
  readonly landmarks: SkullDrawing['landmarks'];
  /** Where the reading stands. */
  readonly value: number;
}

const spacing = 1.2;
/** A limit this near to the middle outline is the middle outline. */
const apart = 1;

/**
 * Outlines of a restored skull at the ends of its interval, as thin dotted lines without a face of their own: the trait's
 * opening, and the restored edge of the bone that holds it, where it differs from the middle one. Empty without an
 * accent.
 */
export function limitOutlines(
  drawing: SkullDrawing,
  reading: string,
  ends: readonly LimitShape[],
): InkShape[] {
  const { regions, placed } = composeSkull(drawing, 'outline');
  const outlined = outlinedPieces(drawing);
  const middle = placed.pieces.filter(({ piece }) => outlined.has(piece.id)).flatMap(({ points }) => points);
  const isApart = (point: PlanePoint) => middle.every((other) => distanceBetween(point, other) > apart);
  return ends.flatMap(({ landmarks, value }) => {
    const measured = drawing.measured.map((each) => (each.landmark === reading ? { ...each, value } : each));
    const { pieces } = placeTemplate({ ...drawing, landmarks, measured }, spacing);
    const isShown = ({ piece }: PlacedPiece) => {
      const { isRestored } = regions.get(piece.part)!;
      return (point: PlanePoint) => isRestored(point) && isApart(point);
    };
    const lines = pieces
      .filter(({ piece }) => outlined.has(piece.id))
      .flatMap((placedPiece) =>
        drawnRuns(placedPiece).flatMap((run) => runsWhere(run, isShown(placedPiece))),
      );
    return inkShape(
      'limit',
      lines.map((line) => linePath(line)),
    );
  });
}

/** The accent, and the first bone of its part. */
function outlinedPieces({ template, accent }: SkullDrawing): Set<string> {
  const opening = template.pieces.find(({ id }) => id === accent?.piece);
  const bone = template.pieces.find(({ kind, part }) => kind === 'bone' && part === opening?.part);
  return new Set([opening, bone].flatMap((piece) => (piece ? [piece.id] : [])));
}
