/** Whether a skull shows its bone alone, or also what is restored. */
export type Restoration = 'bone' | 'restored';

/** What a visitor asked to see of one animal; it holds until another animal comes into focus. */
export interface RestorationWish {
  readonly taxon: string;
  readonly restoration: Restoration;
}

/**
 * What a skull shows: what the visitor asked for; else bone alone where the step asks for it, or where less than two thirds
 * of the skull was found; else all of it.
 */
export function restorationOf(
  taxon: string | undefined,
  show: string,
  isFragment: boolean,
  wish: RestorationWish | undefined,
): Restoration {
  if (wish && wish.taxon === taxon) return wish.restoration;
  return show === 'bone' || isFragment ? 'bone' : 'restored';
}
