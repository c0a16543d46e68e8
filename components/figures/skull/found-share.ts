import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/index.ts';
import { drawSkull } from './draw-skull.ts';
import type { SkullDrawing } from './skull-drawing.ts';
import { drawnRuns, splitRuns } from './trace-edges.ts';

/**
 * How much of a skull was found, from 0 to 1: the share of the drawn edges of its bones, by their length, that lies on
 * elements which are there and on this side of where bone ends. It is what a reader sees drawn firm, against firm and dashed
 * together; landmarks would count most where there is most to measure. 1 without an edge of bone.
 */
export function foundShare(drawing: SkullDrawing): number {
  if (isWhole(drawing)) return 1;
  const { placed, regions } = drawSkull(drawing, 'outline').picture;
  let found = 0;
  let all = 0;
  for (const piece of placed.pieces) {
    if (piece.piece.kind !== 'bone') continue;
    const { isRestored } = regions.get(piece.piece.part)!;
    for (const run of drawnRuns(piece)) {
      all += lengthOf(run);
      for (const { answer, points } of splitRuns(run, isRestored)) if (!answer) found += lengthOf(points);
    }
  }
  return all > 0 ? found / all : 1;
}

/** Whether every part is there, and every landmark of it found: so for most animals, whose outline need not be traced. */
function isWhole({ template, landmarks, elements, breaks }: SkullDrawing): boolean {
  const parts = Object.entries(template.parts);
  return (
    breaks.length === 0 &&
    Object.values(landmarks).every(({ basis }) => basis === 'digitised') &&
    parts.every(([part, { elements: own }]) => {
      const hasPoint = Object.keys(landmarks).some((id) => template.landmarks[id]?.part === part);
      return hasPoint && own.some((name) => elements.includes(name));
    })
  );
}

function lengthOf(line: readonly PlanePoint[]): number {
  return line.slice(1).reduce((sum, point, index) => sum + distanceBetween(line[index]!, point), 0);
}
