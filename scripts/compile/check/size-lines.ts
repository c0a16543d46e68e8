import { findResistantLine, median, type Line } from '../../../analysis/statistics/index.ts';
import type { LogLength } from './log-lengths.ts';

/** Fewer specimens than this say nothing about what is usual. */
const fewest = 5;

/** What the size of a specimen says of its other lengths: how far each is off, and what was taken for size. */
export interface SizeAnswer {
  off: number;
  by: string | undefined;
}

/**
 * Lengths of a specimen against its size. Where a trait names a measurement as size and the specimen has it, a resistant
 * line on logs predicts each length from it; else the specimen’s other lengths do, by a line of slope one.
 */
export class SizeLines {
  readonly #size: string | undefined;
  readonly #usual: ReadonlyMap<string, number>;
  readonly #lines: ReadonlyMap<string, Line>;

  constructor(lengths: readonly LogLength[], size: string | undefined) {
    this.#size = size;
    const groups = [...Map.groupBy(lengths, ({ measurement }) => measurement)].filter(
      ([, group]) => group.length >= fewest,
    );
    this.#usual = new Map(groups.map(([id, group]) => [id, median(group.map(({ log }) => log))]));
    const sizes = new Map(
      lengths.flatMap(({ measurement, specimen, log }) =>
        measurement === size ? [[specimen, log] as const] : [],
      ),
    );
    this.#lines = new Map(
      groups.flatMap(([id, group]) => {
        const points = group.flatMap(({ specimen, log }): [number, number][] =>
          sizes.has(specimen) ? [[sizes.get(specimen)!, log]] : [],
        );
        const line = id === size || points.length < fewest ? undefined : findResistantLine(points);
        return line ? [[id, line] as const] : [];
      }),
    );
  }

  /** How far a length is off what its specimen’s size predicts, on log scale; undefined where nothing says. */
  offOf(length: LogLength, siblings: readonly LogLength[]): SizeAnswer | undefined {
    const size = siblings.find(({ measurement }) => measurement === this.#size);
    const line = this.#lines.get(length.measurement);
    if (!size || !line || this.#isOdd(size, siblings)) return this.#offOthers(length, siblings);
    return { off: length.log - (line.intercept + line.slope * size.log), by: size.measurement };
  }

  /** A size that its specimen’s other lengths contradict tells nothing of them. */
  #isOdd(size: LogLength, siblings: readonly LogLength[]): boolean {
    const off = this.#offOthers(size, siblings)?.off;
    return off !== undefined && Math.abs(off) > Math.LN2 * 2;
  }

  /** Of two lengths that contradict each other the odder one is meant. */
  #offOthers(length: LogLength, siblings: readonly LogLength[]): SizeAnswer | undefined {
    const deviations = siblings.flatMap((sibling) => {
      const typical = this.#usual.get(sibling.measurement);
      return typical === undefined ? [] : [{ sibling, by: sibling.log - typical }];
    });
    const own = deviations.find(({ sibling }) => sibling === length);
    const others = deviations.filter(({ sibling }) => sibling !== length);
    if (!own || others.length === 0) return undefined;
    const size = median(others.map(({ by }) => by));
    if (others.length === 1 && Math.abs(own.by) < Math.abs(size)) return undefined;
    return { off: own.by - size, by: undefined };
  }
}
