import { composeSkull } from './compose-skull.ts';
import { linePath } from './compact-path.ts';
import { inkShape, type InkShape } from './ink-shape.ts';
import type { PlacedPiece } from './place-template.ts';
import { placeTemplate } from './place-template.ts';
import { drawnRuns, runsWhere } from './trace-edges.ts';
import type { SkullDrawing } from './skull-drawing.ts';

/** Landmarks of a restoration at one end of its interval. */
export type LimitLandmarks = SkullDrawing['landmarks'];

/**
 * Outlines of a restored skull at the two ends of its interval, as thin dotted lines without a face of their own: the trait's
 * opening, and the edge of bone where the part is restored. `value` is where the reading stands at each end.
 */
export function limitOutlines(
  drawing: SkullDrawing,
  reading: string,
  ends: readonly { readonly landmarks: LimitLandmarks; readonly value: number }[],
): InkShape[] {
  const { regions } = composeSkull(drawing, 'outline');
  return ends.flatMap(({ landmarks, value }) => {
    const measured = drawing.measured.map((each) => (each.landmark === reading ? { ...each, value } : each));
    const { pieces } = placeTemplate({ ...drawing, landmarks, measured }, 1.8);
    const isRestored = (part: string) => regions.get(part)!.isRestored;
    const lines = pieces
      .filter((piece) => isOutlined(piece, drawing))
      .flatMap((piece) => drawnRuns(piece).flatMap((run) => runsWhere(run, isRestored(piece.piece.part))));
    return inkShape(
      'limit',
      lines.map((line) => linePath(line)),
    );
  });
}

function isOutlined({ piece }: PlacedPiece, { template, accent }: SkullDrawing): boolean {
  const firstOfPart = template.pieces.find(({ kind, part }) => kind === 'bone' && part === piece.part);
  return piece.id === accent?.piece || piece.id === firstOfPart?.id;
}
