import type { Kin } from './kin.ts';

/**
 * Rows of a tree, counted from the top: each animal has the row that `rowOf` gives it, and a fork stands halfway between
 * the first and the last of what hangs on it.
 */
export function rowsOf(kin: Kin, rowOf: (animal: string) => number): Map<string, number> {
  const rows = new Map<string, number>();
  const place = ({ id, children }: Kin): number => {
    const below = children.map(place);
    const row = below.length === 0 ? rowOf(id) : (Math.min(...below) + Math.max(...below)) / 2;
    rows.set(id, row);
    return row;
  };
  place(kin);
  return rows;
}

/** First and last row of what hangs on a fork. */
export function reachOf(fork: Kin, rows: ReadonlyMap<string, number>): readonly [number, number] {
  const below = fork.children.map((child) => rows.get(child.id)!);
  return [Math.min(...below), Math.max(...below)];
}
