import {
  simplifyLine,
  traceCurve,
  type DrawingTemplate,
  type PlanePoint,
  type TemplatePiece,
} from '../../analysis/geometry/index.ts';
import type { OutlinePath } from './slice-block.ts';

/** The main edges of a template, few points each, where the template itself has them. */
export interface TemplateOutline {
  readonly points: readonly PlanePoint[];
  readonly paths: readonly OutlinePath[];
}

const spacing = 1.5;
/** Farthest that a small picture's edge may lie from the template's, in units of the trait. */
const tolerance = 0.5;

/** Edges of the bones, the eye socket and the trait's opening: what is told apart at the size of a thumbnail. */
export function templateOutline(template: DrawingTemplate, accent: string | undefined): TemplateOutline {
  const points: PlanePoint[] = [];
  const paths: OutlinePath[] = [];
  for (const piece of template.pieces) {
    const role = roleOf(piece, accent);
    if (!role) continue;
    const runs = cornerRuns(piece, template).map((run) => simplifyLine(run, tolerance));
    const stretches = runs.map((run): [number, number] => {
      const first = points.length;
      points.push(...run);
      return [first, points.length - 1];
    });
    paths.push(...pathsOf(role, stretches, piece.undrawn ?? []));
  }
  return { points, paths };
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

/** A ring is one stretch of points, as its runs follow each other; edges that are not drawn make fill and edge two paths. */
function pathsOf(
  role: 'bone' | 'socket' | 'opening',
  stretches: readonly [number, number][],
  undrawn: readonly number[],
): OutlinePath[] {
  const ring: OutlinePath = { role, runs: [[stretches[0]![0], stretches.at(-1)![1]]], closed: true };
  if (undrawn.length === 0 || role === 'socket') return [ring];
  return [
    { ...ring, role: `${role}-fill` },
    { role: `${role}-edge`, runs: stretches.filter((_, index) => !undrawn.includes(index)), closed: false },
  ];
}
