import type { Scene } from '../scene/scene.ts';
import { levelMarks } from './level-marks.ts';
import { rockColumn } from './rock-column.ts';
import { gridLines } from './section-axes.ts';
import type { SectionFigure } from './section-data.ts';
import { smallSectionLayout } from './section-layout.ts';
import { sectionScales } from './section-scales.ts';

/** The figure of a section at the size of a card, without words; undefined where no level holds an individual. */
export function composeSmallSection(
  figure: SectionFigure,
  {
    width,
    height,
    markScale,
  }: { readonly width: number; readonly height: number; readonly markScale: number },
): Scene | undefined {
  if (figure.levels.length === 0) return undefined;
  const layout = smallSectionLayout(width, height, markScale);
  const scales = sectionScales(figure, layout);
  const marks = [
    ...gridLines(figure, layout, scales),
    ...rockColumn(figure, layout, scales),
    ...levelMarks(figure, layout, scales),
  ];
  return { width, height, marks };
}
