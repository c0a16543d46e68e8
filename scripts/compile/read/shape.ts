import type { z } from 'zod';
import { didYouMean, findNearest } from '../findings/suggest.ts';
import { knownKeys } from '../schema/known-keys.ts';
import type { Report } from '../findings/report.ts';
import type { Span } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** Checks one record against its schema; the value comes back with defaults filled in, or undefined after findings. */
export function checkShape<S extends z.ZodType>(
  record: Located<unknown>,
  schema: S,
  report: Report,
): z.output<S> | undefined {
  const result = schema.safeParse(record.value, { reportInput: true });
  if (result.success) return result.data;
  for (const issue of withoutEchoes(result.error.issues, record)) reportIssue(record, issue, [], report);
  return undefined;
}

function reportIssue(record: Located<unknown>, issue: Issue, base: Path, report: Report): void {
  const path = [...base, ...issue.path];
  if (issue.code === 'invalid_union') return reportUnion(record, issue, path, report);
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) unknownKey(record, path, key, report);
    return;
  }
  if (issue.code === 'invalid_key') return badKey(record, path, report);
  const field = nameOf(path);
  const given = valueAt(record.value, path);
  if (given === undefined && !(issue.code === 'custom')) {
    report.add('missing-key', record.at(path), `missing ${field}`, `add it: ${expectation(issue)}`);
    return;
  }
  const span = record.at(path);
  const shown = show(given);
  if (reportDoubt(String(path.at(-1)), given, span, report)) return;
  if (issue.code === 'invalid_type') {
    report.add(
      'wrong-type',
      span,
      `${field} is ${shown}, where ${expectation(issue)} is meant`,
      typeAdvice(issue, given),
    );
  } else if (issue.code === 'invalid_format' || issue.code === 'custom') {
    reportFormat(issue.message, field, shown, span, report);
  } else if (issue.code === 'invalid_value') {
    const known = issue.values.map(String);
    report.add(
      'wrong-value',
      span,
      `unknown ${field}: ${shown}${didYouMean(String(given), known)}`,
      `choose one of: ${known.join(', ')}`,
    );
  } else {
    report.add(
      'wrong-value',
      span,
      `${field} is ${shown}, which is out of range`,
      `allowed: ${expectation(issue)}`,
    );
  }
}

/** Two fields where people write `true` and mean well, but leave out what makes it honest. */
function reportDoubt(key: string, given: unknown, span: Span, report: Report): boolean {
  if (key === 'approximate') {
    report.add(
      'approximate-without-error',
      span,
      `approximate is ${show(given)}, where its plus or minus is meant`,
      'give the 95% plus or minus in the unit of the value: approximate: 6',
    );
  } else if (key === 'admitted') {
    report.add(
      'admitted-without-reason',
      span,
      `admitted is ${show(given)}, where a reason is meant`,
      'say in each language why it counts: admitted: { en: … }',
    );
  } else return false;
  return true;
}

const fieldAdvice: Record<string, string> = {
  age: 'write { stage: … }, { stages: […] }, { from: …, to: … } or { date: …, plusMinus: …, sigma: … }',
  dating: 'write { method: equal-share, root: … }, { method: minimum-branch, minimumBranch: … } or given',
};

const formatAdvice: Record<string, [string, string]> = {
  'not-an-id': [
    'is no id',
    'use small letters, digits and single hyphens, beginning with a letter: obm-1183',
  ],
  'not-a-day': ['is no day', 'write year-month-day: 2026-11-25'],
  'not-a-language': ['is no language tag', 'write two or three small letters, such as en, es or pt-BR'],
  'not-a-preparation': ['is no preparation', "write fossil, skeleton, mould, model, or 'cast of: ID'"],
};

function reportFormat(message: string, field: string, shown: string, span: Span, report: Report): void {
  const [problem, advice] = formatAdvice[message] ?? [
    'has not the right form',
    'see the description of the field in the editor',
  ];
  report.add(
    message === 'not-an-id' ? 'unsafe-id' : 'wrong-value',
    span,
    `${field} ${shown} ${problem}`,
    advice,
  );
}

function badKey(record: Located<unknown>, path: Path, report: Report): void {
  const key = String(path.at(-1));
  const span = record.atKey(path.slice(0, -1), key);
  report.add(
    'wrong-value',
    span,
    `"${key}" is not a language tag`,
    'write two or three small letters, such as en, es or pt-BR',
  );
}

/** Of a union, the branch that the author most likely meant: the one that got furthest with the fewest mistakes. */
function reportUnion(
  record: Located<unknown>,
  issue: Extract<Issue, { code: 'invalid_union' }>,
  path: Path,
  report: Report,
): void {
  const branches = issue.errors.filter((branch) => branch.length > 0);
  const fitting = branches.filter(
    (branch) => !branch.some((each) => each.path.length === 0 && each.code === 'invalid_type'),
  );
  const best = [...(fitting.length > 0 ? fitting : branches)].sort(
    (one, other) => weight(one) - weight(other),
  )[0];
  if (!best || fitting.length === 0) {
    const given = valueAt(record.value, path);
    if (given === undefined)
      report.add(
        'missing-key',
        record.at(path),
        `missing ${nameOf(path)}`,
        'see the description of the field in the editor',
      );
    else if (branches.every((branch) => branch.every((each) => each.code === 'invalid_value'))) {
      const known = branches.flatMap((branch) =>
        branch.flatMap((each) => (each.code === 'invalid_value' ? each.values.map(String) : [])),
      );
      report.add(
        'wrong-value',
        record.at(path),
        `unknown ${nameOf(path)}: ${show(given)}${didYouMean(String(given), known)}`,
        `choose one of: ${known.join(', ')}`,
      );
    } else {
      report.add(
        'wrong-type',
        record.at(path),
        `${nameOf(path)} is ${show(given)}, which is none of the forms allowed`,
        fieldAdvice[String(path.at(-1))] ??
          `write ${branches
            .map((branch) => expectation(branch[0]!))
            .filter(once)
            .join(', or ')}`,
      );
    }
    return;
  }
  for (const each of withoutEchoes(best, record)) reportIssue(record, each, path, report);
}

function weight(branch: readonly Issue[]): number {
  let sum = 0;
  for (const issue of branch)
    sum += issue.code === 'unrecognized_keys' ? 3 * issue.keys.length : issue.code === 'invalid_type' ? 2 : 1;
  return sum;
}

/** A misspelt key is one mistake: the key that is missing for it is not told as well. */
function withoutEchoes(issues: readonly Issue[], record: Located<unknown>): Issue[] {
  const unknown = issues.flatMap((issue) => (issue.code === 'unrecognized_keys' ? issue.keys : []));
  return issues.filter((issue) => {
    const key = issue.path.at(-1);
    if (issue.code === 'unrecognized_keys' || typeof key !== 'string') return true;
    return valueAt(record.value, issue.path) !== undefined || findNearest(key, unknown) === undefined;
  });
}

const placeKeys =
  /^(decimal)?(latitude|longitude|lat|lon|lng|long|coordinates|gps|utm|verbatimCoordinates|verbatimLatitude|verbatimLongitude)$/i;

function unknownKey(record: Located<unknown>, path: Path, key: string, report: Report): void {
  const span = record.atKey(path, key);
  if (placeKeys.test(key)) {
    report.add(
      'exact-place',
      span,
      `an exact place ("${key}") would be published from here`,
      'move it to private.yaml, which is kept out of version control',
    );
    return;
  }
  const elsewhere = knownKeys().has(key);
  report.add(
    'unknown-key',
    span,
    `unknown key "${key}"${path.length > 0 ? ` in ${nameOf(path)}` : ''}${elsewhere ? '' : didYouMean(key, knownKeys())}`,
    elsewhere
      ? 'it belongs to another record or another level of this one: move it there, or look at how far it is indented'
      : 'remove it, or see which keys the editor offers here',
  );
}

function nameOf(path: Path): string {
  return path.map(String).join('.') || 'the record';
}

function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const key of path) {
    if (at === null || typeof at !== 'object') return undefined;
    at = (at as Record<PropertyKey, unknown>)[key]; // any object can be asked for any key
  }
  return at;
}

function show(value: unknown): string {
  if (value === null) return 'empty';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a record of keys';
  const text = typeof value === 'string' ? `"${value}"` : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function expectation(issue: Issue): string {
  if (issue.code === 'invalid_type') return typeWords[issue.expected] ?? issue.expected;
  if (issue.code === 'invalid_value') return issue.values.map(String).join(' | ');
  if (issue.code === 'too_small')
    return issue.origin === 'number' || issue.origin === 'int'
      ? `${issue.inclusive ? 'at least' : 'more than'} ${String(issue.minimum)}`
      : issue.origin === 'string'
        ? 'a text that is not empty'
        : `a list of at least ${String(issue.minimum)}`;
  if (issue.code === 'too_big')
    return issue.origin === 'array'
      ? `a list of at most ${String(issue.maximum)}`
      : `at most ${String(issue.maximum)}`;
  if (issue.code === 'invalid_format') return 'a text of the right form';
  if (issue.code === 'invalid_union') return 'one of the forms in the description of the field';
  return 'another value';
}

const typeWords: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a record of keys',
  record: 'a text for each language, such as { en: … }',
  tuple: 'a list of fixed length',
};

function typeAdvice(issue: Extract<Issue, { code: 'invalid_type' }>, given: unknown): string {
  if (given === null) return `give ${expectation(issue)}, or remove the key`;
  if (issue.expected === 'string' && typeof given === 'number')
    return 'put it between quotation marks, so that it stays as written';
  if (issue.expected === 'number' && typeof given === 'string') {
    if (/^\d+,\d+$/.test(given)) return `write ${given.replace(',', '.')}`;
    return 'write the number alone: no quotation marks, no unit';
  }
  return `give ${expectation(issue)}`;
}

function once<T>(value: T, index: number, all: readonly T[]): boolean {
  return all.indexOf(value) === index;
}
