import { branchMarks, drawnBranches, pointsOf, type DrawnBranch } from '../figures/scene/branches.ts';
import { column } from '../figures/scene/column.ts';
import { phone, type PlateLayout } from '../figures/scene/layout.ts';
import { plateData, type PlateData } from '../figures/scene/plate-data.ts';
import { plateScales, type Scales } from '../figures/scene/scales.ts';
import { text, type Mark, type Scene } from '../figures/scene/scene.ts';
import { statusMarks } from '../figures/scene/status-marks.ts';
import type { LineageView } from '../lineage/view.ts';

/** The tree alone, with its column of time and its marks: the names stand in the row of the slice. */
const layout: PlateLayout = {
  ...phone,
  width: 400,
  height: 400,
  fontSize: 13.5,
  markScale: 0.8,
  column: { left: 6, width: 22, turned: true },
  chart: { left: 62, right: 392, top: 26, bottom: 362 },
  axis: { zero: 72, hundred: 336 },
};

/** Where a line at an age stands on the chart, and how each branch runs there, in pixels of its view box. */
export interface ChartMeasure {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly oldestMa: number;
  /** x and y of points along each branch, from its fork upward, in the order of the branches. */
  readonly lines: readonly (readonly number[])[];
}

/** The chart of a lineage as a scene, and what a line across it must know. */
export function sliceChart(view: LineageView): { scene: Scene; measure: ChartMeasure } {
  const data = plateData(view.lineage, view.trait, view.language);
  const scales = plateScales(data, layout);
  const twigs = new Set(data.branches.map(({ taxon }) => taxon));
  const placed = statusMarks(data, layout, scales).filter(({ taxon }) => twigs.has(taxon.id));
  const drawn = drawnBranches(data.branches, placed, scales, layout.markScale);
  const marks = [...placed].sort(
    (one, other) => Number(other.taxon.status === 'inferred') - Number(one.taxon.status === 'inferred'),
  );
  return {
    scene: {
      width: layout.width,
      height: layout.height,
      marks: [
        ...column(data, layout, scales),
        ...valueTicks(data, scales),
        ...branchMarks(drawn),
        ...marks.flatMap((mark) => mark.marks),
      ],
    },
    measure: {
      width: layout.width,
      height: layout.height,
      left: layout.chart.left,
      right: layout.chart.right,
      top: layout.chart.top,
      bottom: layout.chart.bottom,
      oldestMa: scales.oldestMa,
      lines: drawn.map(lineOf),
    },
  };
}

/** Numbers of the trait's axis under the chart, the last with the unit, and what they measure. */
function valueTicks({ label, unit }: PlateData, scales: Scales): Mark[] {
  const y = layout.chart.bottom + layout.fontSize * 1.2;
  const sign = unit === 'percent' ? ' %' : ` ${unit}`;
  const last = scales.valueTicks.at(-1);
  const numbers = scales.valueTicks.map((value): Mark => ({
    layer: 'column',
    role: 'value-tick',
    shape: text(scales.x(value), y, layout.fontSize, `${value}${value === last ? sign : ''}`, 'middle'),
  }));
  const name = text(layout.chart.left, y + layout.fontSize * 1.25, layout.fontSize, label);
  return [...numbers, { layer: 'column', role: 'value-tick', shape: name }];
}

function lineOf({ course }: DrawnBranch): number[] {
  return [course.start, ...pointsOf(course)].flatMap(([x, y]) => [tenth(x), tenth(y)]);
}

function tenth(pixels: number): number {
  return Math.round(pixels * 10) / 10;
}
