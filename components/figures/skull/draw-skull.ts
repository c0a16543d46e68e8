import { ringArea, type PlanePoint, type TemplatePiece } from '../../../analysis/geometry/index.ts';
import { composePlaced, composeSkull, type SkullPicture } from './compose-skull.ts';
import { SkullFolds, type PlacedPiece } from './place-template.ts';
import type { InkQuality, SkullDrawing } from './skull-drawing.ts';

/** A skull, and the two landmarks between which its template would fold, if it would. */
export interface DrawnSkull {
  readonly picture: SkullPicture;
  readonly foldsBetween?: readonly [string, string];
}

/**
 * A skull in ink or, where its template would fold, the straight lines between its landmarks instead, with the two that do it:
 * so that an author sees what is wrong. Throws where the reading does not stand at its value.
 */
export function drawSkull(drawing: SkullDrawing, quality: InkQuality): DrawnSkull {
  try {
    return { picture: composeSkull(drawing, quality) };
  } catch (error) {
    if (!(error instanceof SkullFolds)) throw error;
    return { picture: straightOutline(drawing), foldsBetween: error.between };
  }
}

function straightOutline(drawing: SkullDrawing): SkullPicture {
  const pieces = drawing.template.pieces
    .filter(({ kind }) => kind === 'bone' || kind === 'socket' || kind === 'opening')
    .map((piece) => straightPiece(piece, drawing))
    .filter(({ points }) => points.length > 3);
  return composePlaced(drawing, { pieces, move: (point) => point }, 'outline');
}

/** The landmarks of a piece that are there, in order and closed; free points belong to the template and are left out. */
function straightPiece(piece: TemplatePiece, { landmarks }: SkullDrawing): PlacedPiece {
  const places = piece.through!.flatMap((stop): PlanePoint[] => {
    const landmark = typeof stop === 'string' ? landmarks[stop] : undefined;
    return landmark ? [landmark.at] : [];
  });
  const points = places.length > 0 ? [...places, places[0]!] : [];
  const { undrawn: _, ...drawn } = piece;
  return {
    piece: drawn,
    points,
    corners: points.map((_point, index) => index),
    turn: ringArea(points) < 0 ? -1 : 1,
  };
}
