import { glyph } from '../scene/glyphs.ts';
import { path, type Mark, type Shape } from '../scene/scene.ts';
import type { FigureLevel, SectionFigure } from './section-data.ts';
import type { SectionLayout } from './section-layout.ts';
import type { SectionScales } from './section-scales.ts';

/** Size of the mark of one worn crown against that of a mean. */
const wornScale = 0.4;

/** Individuals of every level as a quiet strip, and over them its mean with its 95% interval. */
export function levelMarks(figure: SectionFigure, layout: SectionLayout, scales: SectionScales): Mark[] {
  const strips = figure.levels.flatMap((level) => strip(level, layout, scales));
  return [...strips, ...figure.levels.flatMap((level) => meanMark(level, layout, scales))];
}

/** One stroke a whole crown above the line of the level; worn crowns below it as half discs on walls, with arrows. */
function strip(level: FigureLevel, { markScale }: SectionLayout, scales: SectionScales): Mark[] {
  const y = scales.y(level.heightM);
  const [top, length] = [y - 9 * markScale, 6 * markScale];
  const strokes = level.unworn.map((value) => path`M${scales.x(value)} ${top}v${length}`).join('');
  const mark = (role: string, d: string): Mark[] =>
    d === '' ? [] : [{ layer: 'strip', role, datum: level.id, shape: { kind: 'path', d } }];
  return [
    ...mark('individual', strokes),
    ...wornMarks(level, y + 6.4 * markScale, markScale * wornScale, scales, mark),
  ];
}

function wornMarks(
  level: FigureLevel,
  y: number,
  scale: number,
  scales: SectionScales,
  mark: (role: string, d: string) => Mark[],
): Mark[] {
  const parts = level.worn.map((value) => glyph('bounded', scales.x(value), y, scale));
  const d = (role: string) =>
    parts
      .flat()
      .map(({ role: own, shape }) => (own === role && shape.kind === 'path' ? shape.d : ''))
      .join('');
  const arrows = level.worn
    .map((value) => path`M${scales.x(value) + 5.6 * scale} ${y}h${8 * scale}`)
    .join('');
  return [...mark('worn-arrow', arrows), ...mark('worn-half', d('half')), ...mark('worn-wall', d('wall'))];
}

function meanMark(level: FigureLevel, layout: SectionLayout, scales: SectionScales): Mark[] {
  const y = scales.y(level.heightM);
  const mark = (role: string, shape: Shape): Mark => ({ layer: 'marks', role, datum: level.id, shape });
  const { markScale: scale } = layout;
  if (level.estimate === null)
    return glyph('unknown', layout.chart.right - 14 * scale, y, scale).map((part) =>
      mark(part.role, part.shape),
    );
  const [low, high] = level.interval.map((end) => scales.x(end ?? level.estimate!)) as [number, number]; // two ends
  const tick = 3.6 * scale;
  const whisker = path`M${low} ${y}H${high}M${low} ${y - tick}V${y + tick}M${high} ${y - tick}V${y + tick}`;
  const halo = path`M${low - 1.5} ${y}H${high + 1.5}`;
  return [
    mark('whisker-halo', { kind: 'path', d: halo }),
    mark('whisker', { kind: 'path', d: whisker }),
    ...glyph('measured', scales.x(level.estimate), y, scale * 0.86).map((part) =>
      mark(part.role, part.shape),
    ),
  ];
}
