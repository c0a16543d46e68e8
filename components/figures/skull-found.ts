import type { CompiledDrawing } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { skullDrawing } from './skull-figures.ts';
import { foundShare } from './skull/found-share.ts';

/** Below this share of its outline a skull shows its bone alone at first. */
const fragmentBelow = 2 / 3;

/** Whether less than two thirds of a skull was found, by the length of its outline (`foundShare`); a drawing without a template is none. */
export function isFragment(view: LineageView, drawing: CompiledDrawing): boolean {
  return shareOf(view, drawing) < fragmentBelow;
}

/** How much of the outline was found, where it is not all of it; nothing of a drawing by hand, whose outline is another. */
export function foundNotes(view: LineageView, drawing: CompiledDrawing): string[] {
  const percent = Math.floor(shareOf(view, drawing) * 100);
  if (drawing.own || percent >= 99) return [];
  return [view.voice.say('drawing.foundShare', { percent: view.voice.number(percent, 0) })];
}

/** The tracing of an outline takes time and several places ask for it. */
const known = new WeakMap<CompiledDrawing, number>();

function shareOf(view: LineageView, drawing: CompiledDrawing): number {
  const skull = known.has(drawing) ? undefined : skullDrawing(drawing, view);
  const share = known.get(drawing) ?? (skull ? foundShare(skull) : 1);
  known.set(drawing, share);
  return share;
}
