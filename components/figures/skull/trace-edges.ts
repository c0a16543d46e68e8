import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import type { PlacedPiece } from './place-template.ts';

/** Runs of a piece's edge between its corners, without those that are not drawn. */
export function drawnRuns({ piece, points, corners }: PlacedPiece): PlanePoint[][] {
  return corners
    .slice(1)
    .map((end, index) => points.slice(corners[index]!, end + 1))
    .filter((run, index) => run.length > 1 && !piece.undrawn?.includes(index));
}

/** Stretches of a line on which a question has one answer; neighbours share the point at which it changes. */
export function splitRuns(
  line: readonly PlanePoint[],
  ask: (point: PlanePoint) => boolean,
): { answer: boolean; points: PlanePoint[] }[] {
  const runs: { answer: boolean; points: PlanePoint[] }[] = [];
  for (const point of line) {
    const answer = ask(point);
    const last = runs.at(-1);
    if (last?.answer === answer) {
      last.points.push(point);
      continue;
    }
    last?.points.push(point);
    runs.push({ answer, points: [point] });
  }
  return runs.filter((run) => run.points.length > 1);
}

/** The stretches of a line for which a question is answered so. */
export function runsWhere(line: readonly PlanePoint[], ask: (point: PlanePoint) => boolean): PlanePoint[][] {
  return splitRuns(line, ask)
    .filter((run) => run.answer)
    .map((run) => run.points);
}
