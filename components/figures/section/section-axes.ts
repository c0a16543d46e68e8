import { line, text, type Mark } from '../scene/scene.ts';
import type { SectionFigure } from './section-data.ts';
import type { SectionLayout } from './section-layout.ts';
import type { SectionScales } from './section-scales.ts';

/** Words along the axes, in the page's language. */
export interface AxisWords {
  /** Sign of the unit of values. */
  unit: string;
  metres: string;
  ma: string;
  /** Age of a dated bed, with its error where there is room. */
  bedAge(ageMa: number, plusMinusMa: number): string;
  age(ageMa: number): string;
}

/** Grid, metres at the left of the rock column, ages at its right: dated beds firm, ages between them dashed. */
export function sectionAxes(
  figure: SectionFigure,
  layout: SectionLayout,
  scales: SectionScales,
  words: AxisWords,
): Mark[] {
  return [
    ...gridLines(figure, layout, scales),
    ...heights(layout, scales, words),
    ...ages(figure, layout, scales, words),
  ];
}

/** A line for each tick of the values and for each level. */
export function gridLines(figure: SectionFigure, { chart }: SectionLayout, scales: SectionScales): Mark[] {
  const values = scales.valueTicks.map((value): Mark => ({
    layer: 'grid',
    role: value === 0 ? 'value-line value-end' : 'value-line',
    shape: line(scales.x(value), chart.top, scales.x(value), chart.bottom),
  }));
  const levels = figure.levels.map(({ heightM }): Mark => ({
    layer: 'grid',
    role: 'age-line',
    shape: line(chart.left, scales.y(heightM), chart.right, scales.y(heightM)),
  }));
  return [...values, ...levels];
}

function heights(
  { column, fontSize, chart }: SectionLayout,
  scales: SectionScales,
  words: AxisWords,
): Mark[] {
  const x = column.left - fontSize * 0.45;
  const size = fontSize * 0.94;
  return [
    {
      layer: 'column',
      role: 'age-unit',
      shape: text(x, chart.top - fontSize * 0.4, size * 0.92, words.metres, 'end'),
    },
    ...scales.heightTicks.flatMap((height): Mark[] => [
      {
        layer: 'column',
        role: 'height-tick',
        shape: line(column.left - fontSize * 0.3, scales.y(height), column.left, scales.y(height)),
      },
      {
        layer: 'column',
        role: 'age-tick',
        shape: text(x, scales.y(height) + size * 0.34, size, String(height), 'end'),
      },
    ]),
  ];
}

function ages(
  { beds }: SectionFigure,
  layout: SectionLayout,
  scales: SectionScales,
  words: AxisWords,
): Mark[] {
  const { agesLeft, fontSize, detailed, chart } = layout;
  if (agesLeft === undefined || beds.length === 0) return [];
  const near = (height: number) =>
    beds.some((bed) => Math.abs(scales.y(bed.heightM) - scales.y(height)) < fontSize * 1.1);
  const unit = text(agesLeft, chart.top - fontSize * 0.4, fontSize * 0.94 * 0.92, words.ma);
  return [
    { layer: 'column', role: 'age-unit', shape: unit },
    ...scales.ageTicks
      .filter(({ heightM }) => !near(heightM))
      .flatMap(({ ageMa, heightM }) =>
        ageBetween(scales.y(heightM), words.age(ageMa), { ...layout, agesLeft }),
      ),
    ...beds.flatMap(({ heightM, ageMa, plusMinusMa }) =>
      bedAge(scales.y(heightM), detailed ? words.bedAge(ageMa, plusMinusMa) : words.age(ageMa), {
        ...layout,
        agesLeft,
      }),
    ),
  ];
}

type AgesPlace = Pick<SectionLayout, 'column' | 'fontSize'> & { readonly agesLeft: number };

/** A dated bed: a line across the rock column to its age. */
function bedAge(y: number, words: string, { column, agesLeft, fontSize }: AgesPlace): Mark[] {
  return [
    { layer: 'column', role: 'bed-line', shape: line(column.left, y, agesLeft - fontSize * 0.2, y) },
    {
      layer: 'column',
      role: 'bed-age',
      shape: text(agesLeft, y + fontSize * 0.94 * 0.34, fontSize * 0.94, words, 'start', 'strong'),
    },
  ];
}

/** An age between dated beds: a line beside the column, where there is room for one, to its words. */
function ageBetween(y: number, words: string, { column, agesLeft, fontSize }: AgesPlace): Mark[] {
  const [start, end] = [column.left + column.width, agesLeft - fontSize * 0.2];
  const label: Mark = {
    layer: 'column',
    role: 'age-tick',
    shape: text(agesLeft, y + fontSize * 0.94 * 0.34, fontSize * 0.94, words, 'start', 'plain'),
  };
  if (end <= start) return [label];
  return [{ layer: 'column', role: 'age-between', shape: line(start, y, end, y) }, label];
}
