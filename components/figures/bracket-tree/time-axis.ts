import type { ChartUnit } from '../scene/plate-data.ts';
import { line, text, textWidth, type Mark, type Shape } from '../scene/scene.ts';
import type { BracketLayout } from './bracket-layout.ts';
import type { TimeScale } from './time-scale.ts';

/** What the axis says, in the page's language. */
export interface AxisWords {
  /** What the numbers count. */
  unit: string;
  older: string;
  today: string;
}

/** Heights of the parts of the axis against the size of letters. */
const parts = { strip: 1.7, ticks: 3.2, words: 4.6 };

/** How much room the axis takes. */
export function axisHeight(layout: BracketLayout): number {
  return layout.fontSize * 5;
}

/** Lines at round ages through the whole figure, from one height to another. */
export function ageLines(scale: TimeScale, top: number, bottom: number): Mark[] {
  return scale.ticks.map((age) => axisMark('age-line', line(scale.x(age), top, scale.x(age), bottom)));
}

/** The geological units with a line between and a name in each, the ages, and which way time runs. */
export function timeAxis(
  epochs: readonly ChartUnit[],
  words: AxisWords,
  scale: TimeScale,
  layout: BracketLayout,
): Mark[] {
  const size = layout.fontSize;
  const middle = (scale.left + scale.right) / 2;
  const say = (x: number, content: string, anchor: 'start' | 'middle' | 'end') =>
    axisMark('axis-word', text(x, size * parts.words, size, content, anchor));
  const wordsFit = textWidth(words.older + words.unit + words.today, size) < scale.right - scale.left - size;
  return [
    ...strip(epochs, scale, size),
    ...scale.ticks.map((age) =>
      axisMark('axis-tick', text(scale.x(age), size * parts.ticks, size, String(age), 'middle')),
    ),
    say(scale.left, words.older, 'start'),
    say(scale.right, words.today, 'end'),
    ...(wordsFit ? [say(middle, words.unit, 'middle')] : []),
  ];
}

function strip(epochs: readonly ChartUnit[], scale: TimeScale, size: number): Mark[] {
  const height = size * parts.strip;
  return epochs.flatMap((unit, index): Mark[] => {
    const left = scale.x(Math.min(unit.from, scale.oldestMa));
    const right = scale.x(Math.max(0, unit.to));
    if (right <= left) return [];
    const band: Shape = { kind: 'rect', x: left, y: 0, width: right - left, height };
    const role = index % 2 === 0 ? 'unit unit-even' : 'unit unit-odd';
    const name = text((left + right) / 2, size * 1.18, size * 0.94, unit.name, 'middle');
    const fits = textWidth(unit.name, size) <= right - left;
    return [axisMark(role, band), ...(fits ? [axisMark('unit-name', name)] : [])];
  });
}

function axisMark(role: string, shape: Shape): Mark {
  return { layer: 'bracket-axis', role, shape };
}
