import { expect, test } from 'vitest';

/** One value of a file of reference values. */
export type Leaf = number | string | boolean | null;

/** A file of reference values, or a part of one. */
export type Part = Leaf | undefined | readonly Part[] | { readonly [key: string]: Part };

/** A claim: some values of the file, and the same values as the engine has them. */
export interface Check {
  /** The title of its test, a sentence. */
  readonly claim: string;
  /** Path of the part that the answer stands beside, steps joined by slashes; the whole file if left out. */
  readonly at?: string;
  /** The part as the engine makes it. What it leaves out is for other checks; what the file has not is a fault. */
  readonly answer: () => Part;
  /** Largest difference of a number as a share of the known one, or of `size` where that is larger. */
  readonly within: number;
  readonly size?: number;
}

/** A file of reference values held to account: each value is compared, given to the engine, or described with a reason. */
export interface Account {
  readonly name: string;
  readonly values: Part;
  readonly checks: readonly Check[];
  /** Paths of what the checks start from; `*` stands for any step, and a path for all under it. */
  readonly given: readonly string[];
  /** Paths of what is not computed here, each with the reason. */
  readonly described?: Readonly<Record<string, string>>;
}

/** Every value of a part by its path. */
export function leavesOf(part: Part, path = ''): Map<string, Leaf> {
  if (part === undefined) return new Map();
  if (part === null || typeof part !== 'object') return new Map([[path, part]]);
  return new Map(
    Object.entries(part).flatMap(([step, inner]) => [
      ...leavesOf(inner, path === '' ? step : `${path}/${step}`),
    ]),
  );
}

/** Whether a path lies at or under a pattern. */
export function isUnder(path: string, pattern: string): boolean {
  const steps = path.split('/');
  return pattern.split('/').every((step, k) => step === steps[k] || (step === '*' && k < steps.length));
}

/** What differs between an answer and the file, in words, a line a value; values the file has not are told too. */
export function differences(known: ReadonlyMap<string, Leaf>, check: Check): string[] {
  const { at = '', within, size = 0 } = check;
  return [...leavesOf(check.answer(), at)].flatMap(([path, found]) => {
    if (!known.has(path)) return [`${path}: the file has no such value`];
    const value = known.get(path)!;
    if (typeof value !== 'number' || typeof found !== 'number')
      return Object.is(value, found) ? [] : [`${path}: known ${value}, found ${found}`];
    const most = within * Math.max(Math.abs(value), size);
    return Math.abs(found - value) <= most ? [] : [`${path}: known ${value}, found ${found}`];
  });
}

/** Values of a file that are neither compared nor given nor described, and patterns that stand for no value. */
export function openItems({ values, checks, given, described = {} }: Account): string[] {
  const known = leavesOf(values);
  const compared = new Set(checks.flatMap(({ at = '', answer }) => [...leavesOf(answer(), at).keys()]));
  const patterns = [...given, ...Object.keys(described)];
  const open = [...known.keys()].filter(
    (path) => !compared.has(path) && !patterns.some((pattern) => isUnder(path, pattern)),
  );
  const idle = patterns.filter(
    (pattern) => ![...known.keys()].some((path) => isUnder(path, pattern) && !compared.has(path)),
  );
  return [...open, ...idle.map((pattern) => `${pattern}: stands for no value that is not compared`)];
}

/** Writes the tests of a file: one a check, and one that no value of the file is passed over. */
export function holdToAccount(account: Account): void {
  const known = leavesOf(account.values);
  const checks = account.checks.map((check) => ({ ...check, answer: once(check.answer) }));
  for (const check of checks)
    test(`${account.name}: ${check.claim}`, () => expect(differences(known, check)).toEqual([]));
  test(`${account.name}: each of its ${known.size} values is compared, given, or described with a reason`, () => {
    expect(openItems({ ...account, checks })).toEqual([]);
  });
}

function once(of: () => Part): () => Part {
  let made: { readonly part: Part } | undefined;
  return () => (made ??= { part: of() }).part;
}
