/** A share of a way that has a name in speech, by an id such as `1-4`. */
export interface Share {
  readonly at: number;
  readonly id: string;
}

const share = (part: number, whole: number): Share => ({ at: part / whole, id: `${part}-${whole}` });

/** Shares by which one place is told, in order. */
export const fineShares: readonly Share[] = [
  share(1, 10),
  share(1, 5),
  share(1, 4),
  share(3, 10),
  share(1, 3),
  share(2, 5),
  share(1, 2),
  share(3, 5),
  share(2, 3),
  share(7, 10),
  share(3, 4),
  share(4, 5),
  share(9, 10),
];

/** Shares by which the ends of a wide interval are told, in order. */
export const wideShares: readonly Share[] = [
  share(1, 10),
  share(1, 4),
  share(1, 3),
  share(1, 2),
  share(2, 3),
  share(3, 4),
  share(9, 10),
];

/** The greatest named share that is no more than a place; undefined before the first. */
export function shareAtMost(shares: readonly Share[], place: number): Share | undefined {
  return shares.findLast(({ at }) => at <= place);
}

/** The smallest named share that is no less than a place; undefined after the last. */
export function shareAtLeast(shares: readonly Share[], place: number): Share | undefined {
  return shares.find(({ at }) => at >= place);
}
