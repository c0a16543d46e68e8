import type { Box } from './label-slots.ts';

/** Side of a cell, in pixels. */
const cell = 16;

/** Points sorted into cells, so that those in a box are counted without looking at all. */
export class PointGrid {
  readonly #cells = new Map<string, (readonly [number, number])[]>();

  constructor(points: readonly (readonly [number, number])[]) {
    for (const point of points) {
      const key = `${Math.floor(point[0] / cell)} ${Math.floor(point[1] / cell)}`;
      const here = this.#cells.get(key);
      if (here) here.push(point);
      else this.#cells.set(key, [point]);
    }
  }

  /** How many points lie inside a box, its edges left out. */
  countIn({ left, right, top, bottom }: Box): number {
    let count = 0;
    for (let column = Math.floor(left / cell); column * cell < right; column++)
      for (let row = Math.floor(top / cell); row * cell < bottom; row++)
        for (const [x, y] of this.#cells.get(`${column} ${row}`) ?? [])
          if (x > left && x < right && y > top && y < bottom) count++;
    return count;
  }
}
