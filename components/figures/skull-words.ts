import type { CompiledDrawing } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';

/** How many points of a drawing were found on bone. */
export function foundPoints({ points }: CompiledDrawing): number {
  return Object.values(points).filter(({ basis }) => basis === 'digitised').length;
}

/** Whether any part of a drawing is worked out. */
export function isRestored(drawing: CompiledDrawing): boolean {
  if (drawing.own) return drawing.own.restored !== '';
  return foundPoints(drawing) < Object.keys(drawing.points).length;
}

/** What stands beside every drawn skull: who drew it by hand; else that it is a diagram, of how many landmarks of which specimens, with more than two cut short. */
export function diagramWords(view: LineageView, drawing: CompiledDrawing): string {
  const { own } = drawing;
  if (own)
    return view.voice.say('drawing.own', {
      specimen: view.findSpecimen(own.specimen)?.label ?? own.specimen,
      author: own.by,
    });
  const labels = drawing.specimens.map((id) => view.findSpecimen(id)?.label ?? id);
  return view.voice.say('drawing.caption', {
    points: foundPoints(drawing),
    specimens: shortList(view, labels),
  });
}

/** What more there is to say of a drawing: that a side was turned over, that parts are restored, that it has no scale. */
export function drawingNotes(view: LineageView, drawing: CompiledDrawing): string[] {
  const mirrored = drawing.specimens.flatMap((id) => {
    const specimen = view.findSpecimen(id);
    return specimen?.mirrored ? [specimen.label] : [];
  });
  return [
    ...(mirrored.length > 0
      ? [view.voice.say('drawing.mirrored', { specimens: shortList(view, mirrored) })]
      : []),
    ...(drawing.mmPerUnit === undefined ? [view.voice.say('drawing.noScale')] : []),
  ];
}

/** Labels in a row; of more than two only the first, with how many more there are. */
export function shortList(view: LineageView, labels: readonly string[]): string {
  return labels.length > 2
    ? view.voice.say('list.more', { shown: labels[0]!, count: labels.length - 1 })
    : labels.join(', ');
}
