import {
  simplifyLine,
  traceCurve,
  type DrawingTemplate,
  type PlanePoint,
  type TemplatePiece,
} from '../../analysis/geometry/index.ts';
import type { OutlineLine } from './slice-block.ts';

/** The main edges of a template, few points each, where the template itself has them. */
export interface TemplateOutline {
  readonly points: readonly PlanePoint[];
  readonly lines: readonly OutlineLine[];
}

const spacing = 1.5;
/** Farthest that a small picture's edge may lie from the template's, in units of the trait. */
const tolerance = 0.75;

/** Edges of the bones, the eye socket and the trait's opening: what is told apart at the size of a thumbnail. */
export function templateOutline(template: DrawingTemplate, accent: string | undefined): TemplateOutline {
  const points: PlanePoint[] = [];
  const lines: OutlineLine[] = [];
  for (const piece of template.pieces) {
    const role = roleOf(piece, accent);
    if (!role) continue;
    const runs = cornerRuns(piece, template).map((run) => simplifyLine(run, tolerance));
    const stretches = runs.map((run): [number, number] => {
      const first = points.length;
      points.push(...run);
      return [first, points.length - 1];
    });
    lines.push(...linesOf(role, stretches, piece.undrawn ?? []));
  }
  return { points, lines };
}

function roleOf(
  { id, kind }: TemplatePiece,
  accent: string | undefined,
): 'bone' | 'socket' | 'opening' | undefined {
  if (kind === 'bone' || kind === 'socket') return kind;
  return kind === 'opening' && id === accent ? kind : undefined;
}

/** Points of a piece between its corners. */
function cornerRuns(piece: TemplatePiece, { landmarks }: DrawingTemplate): PlanePoint[][] {
  const course = piece.through!.map((stop) =>
    stop === 'corner' || typeof stop !== 'string' ? stop : landmarks[stop]!.at,
  );
  const { points, corners } = traceCurve(course as Parameters<typeof traceCurve>[0], spacing);
  return corners.slice(1).map((end, index) => points.slice(corners[index]!, end + 1));
}

/** A ring is one line, as its stretches follow each other; one with edges that are not drawn is a fill and the edges that are. */
function linesOf(
  role: 'bone' | 'socket' | 'opening',
  stretches: readonly [number, number][],
  undrawn: readonly number[],
): OutlineLine[] {
  const ring = { first: stretches[0]![0], last: stretches.at(-1)![1] };
  if (undrawn.length === 0 || role === 'socket') return [{ role, ...ring }];
  const edges = drawnStretches(stretches, undrawn).map((stretch) => ({
    role: `${role}-edge` as const,
    ...stretch,
  }));
  return [{ role: `${role}-fill`, ...ring }, ...edges];
}

/** Stretches that have an edge, those that follow each other as one. */
function drawnStretches(
  stretches: readonly [number, number][],
  undrawn: readonly number[],
): { first: number; last: number }[] {
  const drawn: { first: number; last: number }[] = [];
  stretches.forEach(([first, last], index) => {
    if (undrawn.includes(index)) return;
    const before = drawn.at(-1);
    if (before?.last === first - 1) before.last = last;
    else drawn.push({ first, last });
  });
  return drawn;
}
