import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { AuthoredLineage } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';

/** Keys that hold a text for each language, wherever they stand. */
const textKeys = new Set([
  'title',
  'question',
  'name',
  'label',
  'meaning',
  'why',
  'note',
  'definition',
  'alt',
  'vernacularName',
  'admitted',
  'leftOut',
  'pathology',
  'admits',
  'count',
]);
/** Lists whose items hold a text for each language beside another key. */
const listsWithTexts: Record<string, string> = { marks: 'at', changes: 'reason' };

/** Every text that is given is given in every language of the lineage; a further language is told once. */
export function checkTexts(records: LineageRecords, report: Report): void {
  const { lineage } = records;
  if (!lineage) return;
  const { horizons, taxa, specimens, traits, characters, glossary } = records;
  const lists = [horizons, taxa, specimens, traits, characters, glossary].flatMap(
    (entries) => entries.records as Located<unknown>[],
  );
  const singles = [records.lineage, records.scheme, records.section].filter((record) => record !== undefined);
  for (const record of [...singles, ...lists]) walk(record.raw, [], { record, lineage, report });
}

/** Tells of a language that texts are in and the lineage is not: a translation on its way, or one that was forgotten. */
export function tellUnlisted(
  language: string,
  { value, at }: Located<AuthoredLineage>,
  report: Report,
): void {
  report.add(
    'language-unlisted',
    at(['languages']),
    `there are texts in "${language}", and the lineage is in ${value.languages.map((tag) => `"${tag}"`).join(', ')} only`,
    `add ${language} to languages when every text has it; until then none of them is shown`,
  );
}

interface Context {
  record: Located<unknown>;
  lineage: Located<AuthoredLineage>;
  report: Report;
}

function walk(value: unknown, path: PropertyKey[], context: Context): void {
  if (value === null || typeof value !== 'object') return;
  if (Array.isArray(value)) {
    const other = listsWithTexts[String(path.at(-1))];
    value.forEach((item: unknown, index) => {
      if (other !== undefined && isRecord(item)) checkLanguages(item, [...path, index], [other], context);
      else walk(item, [...path, index], context);
    });
    return;
  }
  for (const [key, inner] of Object.entries(value)) {
    if (textKeys.has(key) && isRecord(inner)) checkLanguages(inner, [...path, key], [], context);
    else walk(inner, [...path, key], context);
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

function checkLanguages(
  texts: Record<string, unknown>,
  path: PropertyKey[],
  others: readonly string[],
  { record, lineage, report }: Context,
): void {
  const { languages } = lineage.value;
  const given = Object.keys(texts).filter((key) => !others.includes(key));
  const foreign = given.filter((key) => !languages.includes(key));
  const missing = languages.filter((language) => !given.includes(language));
  for (const key of foreign) {
    if (missing.length === 0) tellUnlisted(key, lineage, report);
    else
      report.add(
        'unknown-language',
        record.atKey(path, key),
        `"${key}" is no language of this lineage${didYouMean(key, languages)}`,
        'add it to languages in lineage.yaml, or remove the text',
      );
  }
  // A misspelt language is one mistake, not also a missing text.
  if (foreign.length > 0 || missing.length === 0) return;
  report.add(
    'text-missing',
    record.at(path),
    `no text in ${missing.map((language) => `"${language}"`).join(', ')}`,
    `add ${missing[0]}: … here, or take the language off the list in lineage.yaml`,
  );
}
