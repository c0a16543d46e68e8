import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { SourceText, Span } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';
import { findCoordinates, isPlaceColumn } from './place-words.ts';
import { checkPrivateValues } from './private-values.ts';

const advice = 'move the coordinates to private.yaml, and name the district or county here';

/** Exact places stand in private.yaml alone: not in any text, table, story or reference, all of which are published. */
export function checkPlaces(records: LineageRecords, report: Report): void {
  const told = new Set<SourceText>();
  const tell = (span: Span) => {
    told.add(span.source);
    report.add('exact-place', span, 'an exact place would be published from here', advice);
  };
  for (const record of recordsOf(records)) walk(record.raw, [], record, tell);
  for (const source of [...records.stories.values(), records.referencesFile]) checkText(source, tell);
  for (const { header, rows } of records.sheets.values()) {
    header.filter(({ text }) => isPlaceColumn(text)).forEach(({ span }) => tell(span));
    for (const cell of rows.flat()) if (findCoordinates(cell.text)) tell(cell.span);
  }
  // Where a place was told already, it is not told again as one that private.yaml keeps.
  checkPrivateValues(
    records,
    sourcesOf(records).filter((source) => !told.has(source)),
    report,
  );
}

type Tell = (span: Span) => void;

function recordsOf(records: LineageRecords): Located<unknown>[] {
  const { horizons, taxa, specimens, traits, characters, glossary, lineage, scheme } = records;
  const lists: Located<unknown>[][] = [horizons, taxa, specimens, traits, characters, glossary].map(
    (list) => list.records,
  );
  return [lineage, scheme, ...lists.flat()].filter((record) => record !== undefined);
}

/** Every file that is published as it stands or in parts. */
function sourcesOf(records: LineageRecords): SourceText[] {
  const tables = [...records.sheets.values()].map(({ source }) => source);
  const yaml = recordsOf(records).map(({ source }) => source);
  return [...new Set([...yaml, ...tables, ...records.stories.values(), records.referencesFile])];
}

function walk(value: unknown, path: PropertyKey[], record: Located<unknown>, tell: Tell): void {
  if (typeof value === 'string') {
    if (findCoordinates(value)) tell(record.at(path));
  } else if (Array.isArray(value)) value.forEach((item, index) => walk(item, [...path, index], record, tell));
  else if (value !== null && typeof value === 'object')
    for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key], record, tell);
}

function checkText(source: SourceText, tell: Tell): void {
  const found = findCoordinates(source.text);
  if (found) tell({ source, start: found.start, end: found.start + found.length });
}
