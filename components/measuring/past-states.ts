/** States that can be gone back to and forward to; the oldest are let go. */
export interface PastStates<T> {
  readonly before: readonly T[];
  readonly now: T;
  readonly after: readonly T[];
}

const mostStates = 500;

/** A past of one state. */
export function startPast<T>(now: T): PastStates<T> {
  return { before: [], now, after: [] };
}

/** A state more; what was undone cannot be redone then. */
export function stepOn<T>({ before, now }: PastStates<T>, next: T): PastStates<T> {
  return { before: [...before, now].slice(-mostStates), now: next, after: [] };
}

/** The state before, or the same past where there is none. */
export function stepBack<T>(past: PastStates<T>): PastStates<T> {
  const last = past.before.at(-1);
  if (last === undefined) return past;
  return { before: past.before.slice(0, -1), now: last, after: [past.now, ...past.after] };
}

/** The state that was undone, or the same past where none was. */
export function stepAgain<T>(past: PastStates<T>): PastStates<T> {
  const [next, ...after] = past.after;
  if (next === undefined) return past;
  return { before: [...past.before, past.now], now: next, after };
}
