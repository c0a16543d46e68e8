import { withoutPicture } from '../scene/layout.ts';
import { text, wrap, type Mark, type Scene } from '../scene/scene.ts';
import { levelMarks } from './level-marks.ts';
import { rockColumn } from './rock-column.ts';
import { sectionAxes, type AxisWords } from './section-axes.ts';
import type { SectionFigure } from './section-data.ts';
import { sectionFocus, type LyingTooth } from './section-focus.ts';
import { sectionKey, type SectionKeyWords } from './section-key.ts';
import type { SectionLayout } from './section-layout.ts';
import { sectionRuler } from './section-ruler.ts';
import { sectionScales } from './section-scales.ts';

/** Where the caption of a level, which has more lines than an animal's, ends on the tall format, in pixels. */
const tallCaptionBottom = 392;

/** All words of the figure, made for the page's language before. */
export interface SectionWords {
  axes: AxisWords;
  key: SectionKeyWords;
  /** Printed mean of each level. */
  value(level: string): string;
}

/** The whole figure of a section as a flat list of marks, back to front. Pure: the same request gives the same scene. */
export function composeSection(
  figure: SectionFigure,
  format: SectionLayout,
  words: SectionWords,
  tooth: LyingTooth | undefined,
): Scene {
  const layout = tooth ? format : withoutPicture(format, tallCaptionBottom);
  const scales = sectionScales(figure, layout);
  const focus = figure.levels.flatMap((level) =>
    sectionFocus(level, layout, scales, { value: words.value(level.id), tooth }),
  );
  const [under, over] = [true, false].map((carried) =>
    focus.filter(({ role }) => (role === 'carry') === carried),
  );
  return {
    width: layout.width,
    height: layout.height,
    marks: [
      ...sectionAxes(figure, layout, scales, words.axes),
      ...rockColumn(figure, layout, scales),
      ...title(figure, layout),
      ...numbers(figure, layout, scales.y),
      ...under!,
      ...levelMarks(figure, layout, scales),
      ...sectionKey(layout, words.key),
      ...sectionRuler(layout, scales, words.axes.unit),
      ...over!,
    ],
  };
}

function title({ label, meaning }: SectionFigure, { title: place, fontSize: size }: SectionLayout): Mark[] {
  if (!place) return [];
  return [
    { layer: 'title', role: 'trait-name', shape: text(place.x, place.y, size * 1.5, label) },
    ...wrap(meaning, place.letters).map((content, index): Mark => ({
      layer: 'title',
      role: 'trait-meaning',
      shape: text(place.x, place.y + size * (1.7 + index * 1.35), size, content),
    })),
  ];
}

/** Numbers of the levels at the left of the chart; none where they would run into each other. */
function numbers(
  { levels }: SectionFigure,
  { chart, fontSize, detailed }: SectionLayout,
  y: (heightM: number) => number,
): Mark[] {
  const size = fontSize * 0.94;
  const tight = levels.some(
    ({ heightM }, index) => index > 0 && Math.abs(y(heightM) - y(levels[index - 1]!.heightM)) < size,
  );
  if (!detailed || tight) return [];
  return levels.map(({ id, number, heightM }): Mark => ({
    layer: 'labels',
    role: 'level-number',
    datum: id,
    shape: text(chart.left - size * 0.4, y(heightM) + size * 0.34, size, String(number), 'end'),
  }));
}
