import {
  fitTemplate,
  isOnOneLine,
  templateShape,
  type DrawingTemplate,
  type Shape,
} from '../../../analysis/geometry/index.ts';
import type { CompiledDrawing } from '../contract.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';

/**
 * Drawings that can be drawn, with those told whose template would fold: they keep their landmarks, between which pages draw
 * straight lines. One whose landmarks cannot carry the template at all loses it, and is not drawn.
 */
export function settleDrawings(
  drawings: readonly CompiledDrawing[],
  templates: readonly DrawingTemplate[],
  lineage: ResolvedLineage,
  report: Report,
): CompiledDrawing[] {
  return drawings.map((drawing) => {
    const template = templates.find(({ id }) => id === drawing.template);
    if (!template || drawing.own) return drawing;
    const landmarks: Shape = new Map(Object.entries(drawing.points).map(([id, { at }]) => [id, at]));
    if (!carries(landmarks, template)) {
      const { template: _, ...bare } = drawing;
      return bare;
    }
    const fit = fitTemplate(template, landmarks);
    if ('foldsBetween' in fit) tellFold(drawing, fit.foldsBetween, lineage, report);
    return drawing;
  });
}

/** Whether a shape has three landmarks of a template that are not all on one line. */
function carries(landmarks: Shape, template: DrawingTemplate): boolean {
  const shared = [...templateShape(template).keys()].flatMap((id) => {
    const at = landmarks.get(id);
    return at ? [at] : [];
  });
  return !isOnOneLine(shared);
}

function tellFold(
  { taxon, specimens }: CompiledDrawing,
  [one, other]: readonly [string, string],
  lineage: ResolvedLineage,
  report: Report,
): void {
  const drawn = lineage.specimens.find(({ record }) => record.value.id === specimens[0]);
  if (!drawn) return;
  report.add(
    'drawing-folds',
    drawn.record.at(['id']),
    `the drawing of "${taxon}" would fold between "${one}" and "${other}", however short its steps`,
    'look for two landmarks that changed places; until then pages show straight lines between its landmarks',
  );
}
