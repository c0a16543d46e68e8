import { textWidth, type TextRun } from '../scene/scene.ts';
import type { BracketTip } from './bracket-data.ts';
import type { BracketLayout } from './bracket-layout.ts';

/** Mean width of a letter of the italic serif, as a share of its size. */
const italicLetter = 0.46;

/** Greatest share of the width that a name may take before it is shortened. */
const nameShare = 0.46;

/** What is written at the end of a line, and how wide it is, in pixels. */
export interface TipLabel {
  runs: TextRun[];
  width: number;
}

/** The animal's name, with its value where the layout has room. A name too long is shortened, at last with an ellipsis. */
export function tipLabel(tip: BracketTip, layout: BracketLayout): TipLabel {
  const size = layout.fontSize;
  const name = shortened(tip.name, layout);
  const value = layout.short || tip.printed === '' ? '' : `\u2002${tip.printed}`;
  return {
    runs: [{ text: name, voice: 'name' }, ...(value ? [{ text: value, voice: 'plain' as const }] : [])],
    width: name.length * size * italicLetter + textWidth(value, size),
  };
}

function shortened(name: string, layout: BracketLayout): string {
  const most = Math.floor((layout.width * nameShare) / (layout.fontSize * italicLetter));
  const brief = layout.short || name.length > most ? name.replace(/^(\p{L})\p{L}+ /u, '$1. ') : name;
  return brief.length > most ? `${brief.slice(0, most - 1)}…` : brief;
}
