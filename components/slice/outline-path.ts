import type { OutlinePath } from './slice-block.ts';

/** Path data of one path of an outline, in whole tenths of a unit. */
export function outlinePath(outline: ArrayLike<number>, { runs, closed }: OutlinePath): string {
  let d = '';
  for (const [first, last] of runs) {
    for (let point = first; point <= last; point++)
      d += `${point === first ? 'M' : 'L'}${Math.round(outline[2 * point]!)} ${Math.round(outline[2 * point + 1]!)}`;
    if (closed) d += 'Z';
  }
  return d;
}
