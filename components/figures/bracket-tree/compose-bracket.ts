import { path, type Mark, type Scene, type Shape } from '../scene/scene.ts';
import { changeTicks } from './change-ticks.ts';
import type { BracketData } from './bracket-data.ts';
import { rowHeight, type BracketLayout } from './bracket-layout.ts';
import { forksOf, tipsOf, type Kin } from './kin.ts';
import { reachOf, rowsOf } from './rows.ts';
import { ageLines, axisHeight, timeAxis, type AxisWords } from './time-axis.ts';
import { timeScale, type TimeScale } from './time-scale.ts';
import { tipMarks } from './tip-marks.ts';

/** A bracket tree ready to draw, with the rows that a turned fork moves things between. */
export interface BracketScene extends Scene {
  /** Height of the first row, and from one row to the next, in pixels. */
  firstRow: number;
  rowHeight: number;
  /** The time axis as a picture of its own, which stays in sight while a long tree scrolls. */
  axis: Scene;
}

/**
 * The relatives as a plain bracket tree: every line runs along time or across it, every animal ends a line of its own,
 * time runs to the right. Pure: the same data and layout give the same scene.
 */
export function composeBracket(data: BracketData, layout: BracketLayout, words: AxisWords): BracketScene {
  const ground = groundOf(data, layout);
  const { scale, animals, firstRow, height, y } = ground;
  const foot = firstRow + (animals.length - 0.3) * height;
  return {
    width: layout.width,
    height: foot,
    firstRow,
    rowHeight: height,
    axis: {
      width: layout.width,
      height: axisHeight(layout),
      marks: timeAxis(data.epochs, words, scale, layout),
    },
    marks: [
      ...ageLines(scale, 0, foot),
      ...forksOf(data.kin.root).flatMap((fork) => forkMarks(fork, data, ground, layout)),
      ...animals.flatMap((animal) =>
        tipMarks(
          data.tips.get(animal)!,
          {
            y: y(animal),
            lineStart: ground.lineStart(animal),
            endMa: data.kin.agesMa.get(animal)!,
            changes: data.changes.get(animal) ?? [],
          },
          scale,
          layout,
        ),
      ),
    ],
  };
}

/** Where everything stands. */
interface Ground {
  animals: string[];
  scale: TimeScale;
  rows: ReadonlyMap<string, number>;
  firstRow: number;
  height: number;
  y(id: string): number;
  /** Where the line that leads to an animal or a fork begins: at its fork, or a little before the first of all. */
  lineStart(id: string): number;
}

function groundOf(data: BracketData, layout: BracketLayout): Ground {
  const { root, agesMa } = data.kin;
  const animals = tipsOf(root);
  const scale = timeScale(data, layout);
  const height = rowHeight(layout, animals.length);
  const firstRow = height * 0.7;
  const order = new Map(animals.map((animal, index) => [animal, index]));
  const rows = rowsOf(root, (animal) => order.get(animal)!);
  const parents = new Map(forksOf(root).flatMap((fork) => fork.children.map((child) => [child.id, fork.id])));
  return {
    animals,
    scale,
    rows,
    firstRow,
    height,
    y: (id) => firstRow + rows.get(id)! * height,
    lineStart: (id) => {
      const parent = parents.get(id);
      return parent === undefined ? scale.left - layout.fontSize * 0.7 : scale.x(agesMa.get(parent)!);
    },
  };
}

/** The line that leads to a fork, the line across it, and the handle by which it is turned. */
function forkMarks(fork: Kin, data: BracketData, ground: Ground, layout: BracketLayout): Mark[] {
  const x = ground.scale.x(data.kin.agesMa.get(fork.id)!);
  const y = ground.y(fork.id);
  const [top, bottom] = reachOf(fork, ground.rows).map((row) => ground.firstRow + row * ground.height);
  const side = 4 * layout.markScale;
  const start = ground.lineStart(fork.id);
  const mark = (role: string, shape: Shape): Mark => ({
    layer: 'bracket-forks',
    role,
    datum: fork.id,
    shape,
  });
  return [
    mark('kin-line', { kind: 'path', d: path`M${start} ${y}H${x}` }),
    ...changeTicks(data.changes.get(fork.id) ?? [], { from: start, to: x - side, y }, layout).map(
      ([role, shape]) => mark(role, shape),
    ),
    mark('kin-line across', { kind: 'path', d: path`M${x} ${top!}V${bottom!}` }),
    mark('turn-handle', { kind: 'rect', x: x - side, y: y - side, width: side * 2, height: side * 2 }),
  ];
}
