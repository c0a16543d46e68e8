import type { Report } from '../findings/report.ts';
import { entrySchemas, type ListKind } from '../schema/index.ts';
import { wholeFile, type SourceText, type Span } from '../source/source-text.ts';
import { parseYaml, within, type Located } from '../source/yaml-source.ts';
import type { z } from 'zod';
import { checkShape } from './shape.ts';

/** The records of one list file: those of the right shape, and every id that was declared, also by records that failed. */
export interface Entries<T> {
  records: Located<T>[];
  declared: Map<string, Span>;
  /** False when the file could not be read as a list: then nothing is known about its ids. */
  whole: boolean;
}

export type EntryOf<K extends ListKind> = z.output<(typeof entrySchemas)[K]>;

/** No records, for a file that is not there. */
export function noEntries<T>(): Entries<T> {
  return { records: [], declared: new Map(), whole: true };
}

/** Reads a file that is a list of records of one kind. */
export function readEntries<K extends ListKind>(
  kind: K,
  source: SourceText,
  report: Report,
): Entries<EntryOf<K>> {
  const entries = noEntries<EntryOf<K>>();
  const whole = parseYaml(source, report);
  if (!whole) return { ...entries, whole: false };
  if (whole.value === null) return entries;
  if (!Array.isArray(whole.value)) {
    report.add('wrong-type', wholeFile(source), `${kind} is not a list`, 'begin each record with "- id: …"');
    return { ...entries, whole: false };
  }
  whole.value.forEach((value: unknown, index) => {
    const record = within(whole, [index], value);
    const isFirst = declare(record, entries.declared, report);
    const checked = checkShape(record, entrySchemas[kind], report) as EntryOf<K> | undefined; // the schema of this kind
    if (checked !== undefined && isFirst) entries.records.push({ ...record, value: checked });
  });
  return entries;
}

/** Notes the id of a record; false, with a finding, when it was given before. */
function declare(record: Located<unknown>, declared: Map<string, Span>, report: Report): boolean {
  const id = idOf(record.value);
  if (id === undefined) return true;
  const first = declared.get(id);
  if (first) {
    report.add(
      'duplicate-id',
      record.at(['id']),
      `the id "${id}" is given twice`,
      'give one of the two records another id, or remove it',
    );
    return false;
  }
  declared.set(id, record.at(['id']));
  return true;
}

function idOf(value: unknown): string | undefined {
  if (value === null || typeof value !== 'object') return undefined;
  const id = (value as { id?: unknown }).id; // asked of any object
  return typeof id === 'string' ? id : undefined;
}
