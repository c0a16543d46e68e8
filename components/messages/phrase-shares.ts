import type { MessageKey } from './say.ts';

/** A share of a way that has a name in speech. */
export interface Share {
  at: number;
  /** The message that is its name. */
  message: MessageKey;
}

/** Shares by which one place is told, in order. */
export const fineShares: readonly Share[] = [
  { at: 1 / 10, message: 'phrase.share.1-10' },
  { at: 1 / 5, message: 'phrase.share.1-5' },
  { at: 1 / 4, message: 'phrase.share.1-4' },
  { at: 3 / 10, message: 'phrase.share.3-10' },
  { at: 1 / 3, message: 'phrase.share.1-3' },
  { at: 2 / 5, message: 'phrase.share.2-5' },
  { at: 1 / 2, message: 'phrase.share.1-2' },
  { at: 3 / 5, message: 'phrase.share.3-5' },
  { at: 2 / 3, message: 'phrase.share.2-3' },
  { at: 7 / 10, message: 'phrase.share.7-10' },
  { at: 3 / 4, message: 'phrase.share.3-4' },
  { at: 4 / 5, message: 'phrase.share.4-5' },
  { at: 9 / 10, message: 'phrase.share.9-10' },
];

/** Shares by which the ends of a wide interval are told, in order. */
export const wideShares: readonly Share[] = [
  { at: 1 / 10, message: 'phrase.share.1-10' },
  { at: 1 / 4, message: 'phrase.share.1-4' },
  { at: 1 / 3, message: 'phrase.share.1-3' },
  { at: 1 / 2, message: 'phrase.share.1-2' },
  { at: 2 / 3, message: 'phrase.share.2-3' },
  { at: 3 / 4, message: 'phrase.share.3-4' },
  { at: 9 / 10, message: 'phrase.share.9-10' },
];

/** The greatest named share that is no more than a place; undefined before the first. */
export function shareAtMost(shares: readonly Share[], place: number): Share | undefined {
  return shares.findLast(({ at }) => at <= place);
}

/** The smallest named share that is no less than a place; undefined after the last. */
export function shareAtLeast(shares: readonly Share[], place: number): Share | undefined {
  return shares.find(({ at }) => at >= place);
}
