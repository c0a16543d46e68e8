import { centroid } from '../../../analysis/geometry/index.ts';
import type { PieceScene } from './compose-skull.ts';
import { linePath } from './compact-path.ts';
import { inkShape, type InkShape } from './ink-shape.ts';
import { inkWeights } from './ink-style.ts';
import { ruleRing } from './ruling.ts';
import type { AccentStatus } from './skull-drawing.ts';
import { drawnRuns } from './trace-edges.ts';

/**
 * The trait's opening: filled where it was seen, ruled inside a dashed rim where it was worked out from relatives. A value
 * that was measured, but whose place on the drawing was not, is ruled too.
 */
export function composeAccent({ placed, quality, region }: PieceScene, status: AccentStatus): InkShape[] {
  const weights = inkWeights[quality];
  const outline = linePath(placed.points, 'closed');
  const rim = drawnRuns(placed).map((run) => linePath(run));
  const close = drawnRuns({
    ...placed,
    piece: { ...placed.piece, undrawn: drawnIndexes(placed.corners.length - 1, placed.piece.undrawn) },
  }).map((run) => linePath(run));
  if (status !== 'inferred' && !region.isRestored(centroid(placed.points)))
    return [
      ...inkShape('accent', [outline]),
      ...inkShape('accent-rim', rim),
      ...inkShape('accent-close', close),
    ];
  const ruling = ruleRing(placed.points, [placed.points], [], {
    angleRad: Math.PI / 4,
    spacing: weights.accentRuling,
  });
  return [
    ...inkShape('accent-ruling', [ruling]),
    ...inkShape('accent-rim-dashed', rim),
    ...inkShape('accent-close', close),
  ];
}

/** The runs that are drawn, to ask for the others. */
function drawnIndexes(count: number, undrawn: readonly number[] = []): number[] {
  return Array.from({ length: count }, (_, index) => index).filter((index) => !undrawn.includes(index));
}
