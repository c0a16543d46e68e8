import { mostPreserved, skeletalCompleteness } from './skeletal.ts';

/** An element of the whole that is looked for, both sides together: its share, and the element that it is a part of, if any. */
export interface ElementShare {
  readonly id: string;
  readonly share: number;
  readonly within?: string | undefined;
}

/** What one specimen has of an element, 0 to 1; of one side only where the other is lost. */
export interface PreservedRecord {
  readonly element: string;
  readonly side?: 'left' | 'right' | undefined;
  readonly preserved: number;
}

/** Completeness in percent, and the most of each element that any specimen has. */
export interface Completeness {
  /** Of the most complete specimen. */
  readonly best: number;
  /** Of all specimens taken together, the least that they can have. */
  readonly together: number;
  readonly elements: ReadonlyMap<string, number>;
}

const sides = ['left', 'right'] as const;

/**
 * How much of the listed elements is there: of the best specimen and of all together (the two skeletal measures of Mannion and
 * Upchurch 2010, Paleobiology 36: 283–302). Each side is half of an element; a part counts toward the element that it lies
 * within where that is not recorded itself. Undefined without a specimen that has one of them.
 */
export function findCompleteness(
  elements: readonly ElementShare[],
  specimens: readonly (readonly PreservedRecord[])[],
): Completeness | undefined {
  const whole = elements.filter(({ within }) => within === undefined);
  const had = specimens
    .map((records) => halvesOf(elements, records))
    .filter((halves) => [...halves.values()].some((share) => share > 0));
  if (had.length === 0) return undefined;
  const all = mostPreserved(had);
  return {
    best: Math.max(...had.map((halves) => percentOf(whole, halves))),
    together: percentOf(whole, all),
    elements: new Map(
      whole.map(({ id }) => [id, sides.reduce((sum, side) => sum + (all.get(`${id} ${side}`) ?? 0) / 2, 0)]),
    ),
  };
}

/** What a specimen has of each half of each whole element. */
function halvesOf(
  elements: readonly ElementShare[],
  records: readonly PreservedRecord[],
): Map<string, number> {
  const halves = new Map<string, number>();
  for (const side of sides) {
    const own = mostPreserved(
      records
        .filter((record) => record.side === undefined || record.side === side)
        .map(({ element, preserved }) => new Map([[element, preserved]])),
    );
    for (const { id, share, within } of elements) {
      if (within !== undefined) continue;
      const parts = elements.filter((each) => each.within === id);
      const ofParts = parts.reduce((sum, part) => sum + (own.get(part.id) ?? 0) * (part.share / share), 0);
      halves.set(`${id} ${side}`, own.get(id) ?? ofParts);
    }
  }
  return halves;
}

function percentOf(whole: readonly ElementShare[], halves: ReadonlyMap<string, number>): number {
  return skeletalCompleteness(
    whole.flatMap(({ id, share }) =>
      sides.map((side) => {
        const half = `${id} ${side}`;
        return { id: half, weight: share / 2, preserved: halves.get(half) ?? 0 };
      }),
    ),
  );
}
