import { withoutMarks } from '../../messages/without-marks.ts';
import { line, text, type Mark, type Shape } from '../scene/scene.ts';
import type { FigureLevel } from './section-data.ts';
import type { SectionLayout } from './section-layout.ts';
import type { SectionScales } from './section-scales.ts';

/** The tooth that lies on the ruler: the height it was drawn with, and how far its tip stands beside the middle, in mm. */
export interface LyingTooth {
  drawnMm: number;
  /** Millimetres in one unit of its groups `tooth-crown` and `tooth-roots`. */
  mmPerUnit: number;
  /** Of the tip from the axis of the crown, down positive, mm. */
  tipMm: number;
}

/**
 * What belongs to the level in focus: the tooth of its mean height on the ruler, a plumb line from the tip to the axis, the
 * dotted line that carries the reading to its mark, and the flag with the value. Hidden unless that level is in focus.
 */
export function sectionFocus(
  level: FigureLevel,
  layout: SectionLayout,
  scales: SectionScales,
  words: { value: string; tooth: LyingTooth | undefined },
): Mark[] {
  const { rulerTop, markScale } = layout;
  if (rulerTop === undefined || level.estimate === null) return [];
  const mark = (role: string, shape: Shape): Mark => ({ layer: 'focus', role, datum: level.id, shape });
  const [x, y] = [scales.x(level.estimate), scales.y(level.heightM)];
  return [
    mark('carry', line(x, rulerTop + layout.fontSize * 2, x, y - 9 * markScale)),
    mark('focus-ring', { kind: 'circle', x, y, radius: 10 * markScale }),
    ...toothMarks(level.estimate, layout, scales, words.tooth, mark),
    ...flag(x, words.value, layout, rulerTop, mark),
  ];
}

type MarkMaker = (role: string, shape: Shape) => Mark;

function toothMarks(
  heightMm: number,
  { tooth: place, rulerTop, markScale }: SectionLayout,
  scales: SectionScales,
  tooth: LyingTooth | undefined,
  mark: MarkMaker,
): Mark[] {
  if (!tooth || !place || rulerTop === undefined) return [];
  const scale = tooth.mmPerUnit * scales.perMm;
  const at = { kind: 'use' as const, x: scales.x(0), y: place.middle, scale };
  const tip = place.middle + tooth.tipMm * scales.perMm;
  return [
    mark('skull', { ...at, target: 'tooth-roots' }),
    mark('skull', { ...at, target: 'tooth-crown', stretch: heightMm / tooth.drawnMm }),
    mark('plumb plumb-end', line(scales.x(0), place.middle, scales.x(0), rulerTop)),
    mark('plumb plumb-reading', line(scales.x(heightMm), tip, scales.x(heightMm), rulerTop)),
    mark('anchor anchor-end', { kind: 'circle', x: scales.x(0), y: place.middle, radius: 2.3 * markScale }),
    mark('anchor', { kind: 'circle', x: scales.x(heightMm), y: tip, radius: 2.7 * markScale }),
  ];
}

function flag(x: number, value: string, layout: SectionLayout, rulerTop: number, mark: MarkMaker): Mark[] {
  const size = layout.fontSize * 1.2;
  const width = withoutMarks(value).length * size * 0.56 + size;
  const height = layout.fontSize * 1.9;
  const left = Math.min(x - width / 2, layout.chart.right + layout.fontSize - width);
  const top = rulerTop - height - layout.fontSize * 0.55;
  return [
    mark('flag', { kind: 'rect', x: left, y: top, width, height }),
    mark(
      'flag-value',
      text(left + width / 2, top + height / 2 + size * 0.35, size, value, 'middle', 'strong'),
    ),
  ];
}
