import { coordinate, path } from '../scene/scene.ts';
import { forksOf, tipsOf, type Kin } from './kin.ts';
import { reachOf, rowsOf } from './rows.ts';

/** One drawing of the tree on a page, with its rows in the pixels of its own view box. */
export interface LiveDrawing {
  groups: ReadonlyMap<string, SVGGElement>;
  firstRow: number;
  rowHeight: number;
}

export type Rows = ReadonlyMap<string, number>;

/** The relatives that a nested list holds, in the order of its entries. */
export function readKin(entry: HTMLElement): Kin {
  const children = [...entry.querySelectorAll<HTMLElement>(':scope > ul > [data-kin]')].map(readKin);
  return { id: entry.dataset['kin']!, children };
}

/** Rows of a tree whose animals follow each other from the top. */
export function rowsInOrder(kin: Kin): Rows {
  const order = new Map(tipsOf(kin).map((animal, index) => [animal, index]));
  return rowsOf(kin, (animal) => order.get(animal)!);
}

/** The drawing inside a frame that says how its rows stand. */
export function readDrawing(frame: HTMLElement): LiveDrawing {
  const groups = [...frame.querySelectorAll<SVGGElement>('[data-of]')];
  return {
    groups: new Map(groups.map((group) => [group.dataset['of']!, group])),
    firstRow: Number(frame.dataset['firstRow']),
    rowHeight: Number(frame.dataset['rowHeight']),
  };
}

/** Moves everything from the rows in which it was drawn to others, and lets the lines across forks reach as far as they must. */
export function moveRows(drawing: LiveDrawing, kin: Kin, drawn: Rows, rows: Rows): void {
  const { groups, firstRow, rowHeight } = drawing;
  for (const [id, group] of groups) {
    const shift = (rows.get(id)! - drawn.get(id)!) * rowHeight;
    group.setAttribute('transform', `translate(0 ${coordinate(shift)})`);
  }
  for (const fork of forksOf(kin)) {
    const across = groups.get(fork.id)?.querySelector('.across');
    const x = Number(/^M([\d.]+)/.exec(across?.getAttribute('d') ?? '')?.[1]);
    // The line is written inside its fork's group, which has moved already.
    const shift = rows.get(fork.id)! - drawn.get(fork.id)!;
    const [top, bottom] = reachOf(fork, rows).map((row) => firstRow + (row - shift) * rowHeight);
    across?.setAttribute('d', path`M${x} ${top!}V${bottom!}`);
  }
}

/** The fork whose handle is nearest to a point of the screen, if one is within reach. */
export function nearestFork(within: Element, x: number, y: number, reachPx: number): string | undefined {
  let nearest: string | undefined;
  let distance = reachPx;
  for (const handle of within.querySelectorAll<SVGElement>('.turn-handle')) {
    const box = handle.getBoundingClientRect();
    if (box.width === 0) continue;
    const away = Math.hypot(x - box.x - box.width / 2, y - box.y - box.height / 2);
    if (away > distance) continue;
    distance = away;
    nearest = handle.closest<SVGElement>('[data-of]')?.dataset['of'];
  }
  return nearest;
}
