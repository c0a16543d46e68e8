/**
 * One thing said: a code, and what its sentence prints. Numbers are rounded to `decimals` places where that is among the
 * arguments, limits and ends in the safe direction; texts are ids.
 */
export interface Statement {
  readonly code: string;
  readonly args: Readonly<Record<string, string | number>>;
}

/** A statement of a code; arguments that are undefined are left out. */
export function statement(
  code: string,
  args: Readonly<Record<string, string | number | undefined>> = {},
): Statement {
  const known = Object.entries(args).filter(
    (entry): entry is [string, string | number] => entry[1] !== undefined,
  );
  return { code, args: Object.fromEntries(known) };
}
