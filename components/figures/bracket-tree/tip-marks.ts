import { changeTicks } from './change-ticks.ts';
import { approximateGap, glyph } from '../scene/glyphs.ts';
import type { PlateTaxon } from '../scene/plate-data.ts';
import { path, type Mark, type Shape } from '../scene/scene.ts';
import type { BracketTip } from './bracket-data.ts';
import type { BracketLayout } from './bracket-layout.ts';
import { tipLabel } from './tip-label.ts';
import { nameGap, type TimeScale } from './time-scale.ts';

/** The row of an animal in pixels, where its own line begins, and its age in Ma on the tree. */
export interface TipPlace {
  y: number;
  lineStart: number;
  endMa: number;
  /** Numbers of the characters that change on its own line. */
  changes: readonly number[];
}

/** Everything of one animal in its row: its own line, the bar of its finds, the mark of its status, its name. */
export function tipMarks(
  tip: BracketTip,
  { y, lineStart, endMa, changes }: TipPlace,
  scale: TimeScale,
  layout: BracketLayout,
): Mark[] {
  const mark = (role: string, shape: Shape): Mark => ({ layer: 'bracket-tips', role, datum: tip.id, shape });
  const { known } = tip;
  const foot = scale.x(known ? Math.min(known.firstMa, scale.oldestMa) : endMa);
  const name: Shape = {
    kind: 'text',
    x: scale.x(known?.lastMa ?? endMa) + nameGap(layout),
    y: y + layout.fontSize * 0.33,
    size: layout.fontSize,
    anchor: 'start',
    runs: tipLabel(tip, layout).runs,
  };
  return [
    mark('kin-line', { kind: 'path', d: path`M${lineStart} ${y}H${Math.max(lineStart, foot)}` }),
    ...changeTicks(changes, { from: lineStart, to: Math.max(lineStart, foot), y }, layout).map(
      ([role, shape]) => mark(role, shape),
    ),
    ...(known ? finds(known, y, scale, layout.markScale) : []).map(([role, shape]) => mark(role, shape)),
    mark('tip-label', name),
  ];
}

type Part = readonly [role: string, shape: Shape];

function finds(known: PlateTaxon, y: number, time: TimeScale, scale: number): Part[] {
  const toward = known.atLeast === undefined && known.atMost !== undefined ? -1 : 1;
  const x = time.x(known.placedMa);
  return [
    ...ageBar(known, y, time, scale),
    ...(known.status === 'bounded' ? [clearing(x, y, scale, toward)] : []),
    ...glyph(known.status, x, y, scale, toward).map((part): Part => [part.role, part.shape]),
    ...(known.approximate ? [approximateGap(x, y, scale)].map((part): Part => [part.role, part.shape]) : []),
  ];
}

/** Paper between the bar and a half disc, whose flat side would be lost on it. */
function clearing(x: number, y: number, scale: number, toward: 1 | -1): Part {
  const left = x - (toward === 1 ? 4 : 9) * scale;
  return ['gap', { kind: 'rect', x: left, y: y - 4 * scale, width: 13 * scale, height: 8 * scale }];
}

/** From first to last find, with a flat cap where the record ends; an outline where one bed is all there is. */
function ageBar(known: PlateTaxon, y: number, time: TimeScale, scale: number): Part[] {
  const left = time.x(known.firstMa);
  const right = time.x(known.lastMa);
  if (right <= left) return [];
  const height = 4.4 * scale;
  const bar: Shape = { kind: 'rect', x: left, y: y - height / 2, width: right - left, height };
  if (known.oneBed) return [['one-bed', bar]];
  const cap: Part = ['cap', { kind: 'path', d: path`M${right} ${y - height * 1.1}V${y + height * 1.1}` }];
  return known.living ? [['find-bar', bar]] : [['find-bar', bar], cap];
}
