import type { SkullAnchors } from './focus.ts';
import type { PlateLayout } from './layout.ts';
import type { Scales } from './scales.ts';
import { path, text, type Mark } from './scene.ts';

/** Words beside the two lines: `a`, `b`, with their lengths where one specimen alone gives them. */
export interface MeasureWords {
  part: string;
  whole: string;
}

/**
 * The two lengths that a share is made of, drawn on the skull: a from the start of the ruler to the reading, b to its end,
 * each with dotted lines to the bone. Shown where a step asks for the measurement. A phone has no room for them.
 */
export function measureMarks(
  anchors: SkullAnchors,
  value: number,
  layout: PlateLayout,
  scales: Scales,
  words: MeasureWords,
  mark: (role: string, shape: Mark['shape']) => Mark,
): Mark[] {
  if (layout.name === 'phone') return [];
  const y = (height: number) => layout.skullBase + height * scales.unit;
  const step = layout.fontSize * 1.6;
  const partY = Math.max(y(anchors.reading[1]) - step, layout.fontSize * 8);
  const wholeY = partY - step;
  const tick = 4.5 * layout.markScale;
  const [start, reading, end] = [scales.x(0), scales.x(value), scales.x(100)];
  const span = (from: number, to: number, at: number) =>
    path`M${from} ${at}H${to}M${from} ${at - tick}V${at + tick}M${to} ${at - tick}V${at + tick}`;
  return [
    mark('measure-drop', {
      kind: 'path',
      d:
        path`M${start} ${wholeY}V${y(anchors.zero[1])}M${reading} ${partY}V${y(anchors.reading[1])}` +
        path`M${end} ${wholeY}V${y(anchors.hundred[1])}`,
    }),
    mark('measure', { kind: 'path', d: span(start, reading, partY) + span(start, end, wholeY) }),
    mark('measure-word', text(start + 5, partY - 4, layout.fontSize, words.part, 'start', 'strong')),
    mark('measure-word', text(end - 5, wholeY - 4, layout.fontSize, words.whole, 'end', 'strong')),
  ];
}
