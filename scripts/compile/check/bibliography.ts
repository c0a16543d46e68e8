import { yearOf } from '../compose/references.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { sectionSources } from '../section/sources.ts';

/** Every reference has a year, a title and someone who wrote it, and something cites it. */
export function checkBibliography(records: LineageRecords, report: Report): void {
  const cited = citedKeys(records);
  for (const { key, fields, span } of records.references) {
    const missing = [
      yearOf({ key, type: '', fields, span }) === undefined ? 'year' : '',
      fields['title'] === undefined && fields['booktitle'] === undefined ? 'title' : '',
      (fields.author ?? fields.editor ?? fields.organization ?? fields.institution ?? fields.publisher)
        ? ''
        : 'author',
    ].filter((field) => field !== '');
    if (missing.length > 0)
      report.add(
        'reference-incomplete',
        span,
        `"${key}" has no ${missing.join(' and no ')}`,
        'add it to the entry',
      );
    if (!cited.has(key))
      report.add(
        'reference-unused',
        span,
        `"${key}" is cited nowhere`,
        'cite it under sources or source, or remove it',
      );
  }
}

function citedKeys(records: LineageRecords): Set<string> {
  const cited = new Set<string>();
  const add = (key: string | undefined) => key !== undefined && cited.add(key);
  records.lineage?.value.trees.forEach((tree) => add(tree.source));
  const scheme = records.scheme?.value;
  for (const part of [scheme?.landmarks, scheme?.measurements, scheme?.sheets])
    part?.forEach(({ source }) => add(source));
  for (const { value } of [
    ...records.horizons.records,
    ...records.taxa.records,
    ...records.specimens.records,
    ...records.characters.records,
  ])
    value.sources?.forEach(add);
  records.traits.records.forEach(({ value }) => add(value.source));
  sectionSources(records).forEach(({ key }) => add(key));
  for (const { value } of records.specimens.records) {
    for (const written of Object.values(value.measurements)) {
      for (const { source } of Array.isArray(written) ? written : [written]) add(source);
    }
  }
  return cited;
}
