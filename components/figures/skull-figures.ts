import type { LineageView } from '../lineage/view.ts';
import type { SkullAnchors } from './scene/focus.ts';

/** Skulls of a page: definitions that plates call by id, and the points where each is read. */
export interface SkullFigures {
  definitions: string;
  anchors: ReadonlyMap<string, SkullAnchors>;
}

/** Draws every animal that has a drawing in the compiled lineage. */
export function skullFigures(_view: LineageView): SkullFigures {
  return { definitions: '', anchors: new Map() };
}
