/** The engine's answer; undefined where it refuses with a plain error. Any other kind is a mistake of the program and passes on. */
export function unlessRefused<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    return undefined;
  }
}
