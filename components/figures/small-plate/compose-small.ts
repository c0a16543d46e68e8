import { branchMarks, drawnBranches } from '../scene/branches.ts';
import type { PlateData } from '../scene/plate-data.ts';
import { plateScales } from '../scene/scales.ts';
import { line, type Mark, type Scene } from '../scene/scene.ts';
import { statusMarks } from '../scene/status-marks.ts';
import { smallLayout, type SmallSize } from './small-layout.ts';

/**
 * A plate without names: today's line, the ends of the measured line, descent, and the mark of every animal. Undefined when
 * no animal can be placed.
 */
export function composeSmall(data: PlateData, size: SmallSize): Scene | undefined {
  if (data.taxa.length === 0) return undefined;
  const layout = smallLayout(data, size);
  const scales = plateScales(data, layout);
  const placed = statusMarks(data, layout, scales);
  const { chart } = layout;
  const ends = data.ruler ? [0, 100] : [];
  const under: Mark[] = [
    { layer: 'grid', role: 'age-line', shape: line(chart.left, chart.top, chart.right, chart.top) },
    ...ends.map((end): Mark => ({
      layer: 'grid',
      role: 'value-line value-end',
      shape: line(scales.x(end), chart.top, scales.x(end), chart.bottom),
    })),
  ];
  const inferred = placed.filter((mark) => mark.taxon.status === 'inferred');
  const others = placed.filter((mark) => mark.taxon.status !== 'inferred');
  return {
    width: size.width,
    height: size.height,
    marks: [
      ...under,
      ...branchMarks(drawnBranches(data.branches, placed, scales, layout.markScale)),
      // Ruled boxes lie under discs, so that a wide interval never covers a measurement.
      ...[...inferred, ...others]
        .flatMap((mark) => mark.marks)
        .filter(({ role }) => size.whiskers || role !== 'whisker'),
    ],
  };
}
