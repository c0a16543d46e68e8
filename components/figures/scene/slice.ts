import { branchesAt, type Branch } from './branch-list.ts';
import { crossing, type DrawnBranch } from './branches.ts';
import type { Box } from './label-slots.ts';
import type { PlateLayout } from './layout.ts';
import type { PlateData } from './plate-data.ts';
import type { Scales } from './scales.ts';
import { line, text, wrap, type Mark, type Shape } from './scene.ts';

/** Mean width of a letter of the strong sans, as a share of its size. */
const strongLetter = 0.52;

/**
 * A line across the tree at one age: every branch that it cuts is marked, a disc where bones of that age are known
 * and a ring where only the branch is. `datum` is the age, so that a step can call it up.
 */
export function sliceMarks(
  data: PlateData,
  drawn: readonly DrawnBranch[],
  layout: PlateLayout,
  scales: Scales,
  ageMa: number,
  words: string,
): Mark[] {
  const y = scales.y(ageMa);
  const datum = `slice-${ageMa}`;
  const mark = (role: string, shape: Mark['shape']): Mark => ({ layer: 'slices', role, datum, shape });
  const cut = new Set(branchesAt(data.branches, ageMa));
  const cuts = drawn
    .filter(({ branch }) => cut.has(branch))
    .map(({ branch, course }) =>
      mark(hasBoneAt(branch, data, ageMa) ? 'cut cut-bone' : 'cut cut-line', {
        kind: 'circle',
        x: crossing(course, y),
        y,
        radius: 4.6 * layout.markScale,
      }),
    );
  return [
    mark('slice-line', line(layout.chart.left, y, layout.chart.right, y)),
    ...cuts,
    ...sliceCaption(words, y, layout).map((shape) => mark('slice-words', shape)),
  ];
}

/** The words of a slice beyond the chart, centred on its line. */
export function sliceCaption(words: string, y: number, layout: PlateLayout): Shape[] {
  const lines = wrap(words, layout.sliceWords.letters);
  const top = y + layout.fontSize * (0.34 - (lines.length - 1) * 0.62);
  return lines.map((content, index) =>
    text(
      layout.sliceWords.x,
      top + index * layout.fontSize * 1.24,
      layout.fontSize,
      content,
      'start',
      'strong',
    ),
  );
}

/** The discs and rings of slices, which are there to be counted and which no name may hide. */
export function cutBoxes(marks: readonly Mark[]): Box[] {
  return marks.flatMap(({ shape }) => {
    if (shape.kind !== 'circle') return [];
    const { x, y, radius } = shape;
    return [{ left: x - radius, right: x + radius, top: y - radius, bottom: y + radius }];
  });
}

/** The room that each line of words takes which a step calls up beside the chart. */
export function wordBoxes(marks: readonly Mark[]): Box[] {
  return marks.flatMap(({ role, shape }) => {
    if (role !== 'slice-words' || shape.kind !== 'text') return [];
    const letters = shape.runs.reduce((sum, run) => sum + run.text.length, 0);
    const { x: left, y, size } = shape;
    return [{ left, right: left + letters * size * strongLetter, top: y - size, bottom: y + size * 0.3 }];
  });
}

/** Whether the animal of the branch has finds on both sides of the age, or at it. */
function hasBoneAt(branch: Branch, data: PlateData, ageMa: number): boolean {
  const taxon = data.taxa.find((each) => each.id === branch.taxon);
  return taxon !== undefined && !taxon.living && taxon.firstMa >= ageMa && taxon.lastMa <= ageMa;
}
