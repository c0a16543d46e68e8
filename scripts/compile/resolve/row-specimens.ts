import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import { entrySchemas, type SheetMapping, type Specimen } from '../schema/index.ts';
import { hasNamedMonth, reportDate } from '../source/csv-number.ts';
import type { CsvTable } from '../source/csv-source.ts';
import type { Located } from '../source/yaml-source.ts';
import type { TableRow } from './measurement-table.ts';

/**
 * Specimens that are recorded only in a museum's table, one a row. Their ids are made of institution code and catalogue
 * number (or of the table's name and the row, where a table has no numbers), so they stay the same when rows are sorted.
 */
export function rowSpecimens(
  table: CsvTable,
  rows: readonly TableRow[],
  mapping: SheetMapping,
  report: Report,
): { specimen: Located<Specimen>; row: TableRow }[] {
  return rows.flatMap((row, index) => {
    const draft = draftOf(row, index, mapping, report);
    if (!draft) return [];
    const parsed = entrySchemas.specimens.safeParse(draft);
    if (!parsed.success) {
      const field = String(parsed.error.issues[0]!.path[0]);
      const cell = row.facts.get(field) ?? row.first;
      report.add(
        'wrong-value',
        cell.span,
        `unknown ${field}: "${cell.text}"`,
        'see which values the specimens of specimens.yaml allow',
      );
      return [];
    }
    return [{ specimen: locatedRow(parsed.data, row, table), row }];
  });
}

function draftOf(
  row: TableRow,
  index: number,
  mapping: SheetMapping,
  report: Report,
): Record<string, unknown> | undefined {
  if (row.garbled) return undefined;
  const taxon = findTaxon(row, mapping, report);
  if (taxon === undefined) return undefined;
  const number = row.facts.get('catalogNumber');
  if (number && hasNamedMonth(number.text)) {
    reportDate(number, report);
    return undefined;
  }
  const institutionCode = row.facts.get('institutionCode')?.text ?? mapping.institutionCode;
  const table = mapping.file.replace(/^.*\//, '').replace(/\.csv$/, '');
  const name = number ? `${institutionCode ?? table}-${number.text}` : `${table}-${index + 1}`;
  return {
    id: row.facts.get('specimen')?.text ?? toId(name),
    taxon,
    institutionCode,
    catalogNumber: number?.text,
    basisOfRecord: 'PreservedSpecimen',
    horizon: row.facts.get('horizon')?.text,
    sex: row.facts.get('sex')?.text.toLowerCase(),
    lifeStage: row.facts.get('lifeStage')?.text.toLowerCase(),
    sources: mapping.source === undefined ? undefined : [mapping.source],
  };
}

/** The taxon that a row names, by the names of the mapping where it has any; what keeps it from being found is reported. */
function findTaxon(row: TableRow, { taxa: names }: SheetMapping, report: Report): string | undefined {
  const taxon = row.facts.get('taxon');
  if (!taxon) {
    report.add(
      'csv-row',
      row.first.span,
      'this row names no taxon',
      'fill the column that is mapped to taxon',
    );
    return undefined;
  }
  if (names && !Object.hasOwn(names, taxon.text)) {
    report.add(
      'unknown-id',
      taxon.span,
      () => `unknown taxon: "${taxon.text}"${didYouMean(taxon.text, Object.keys(names))}`,
      'add the name to taxa of this sheet in scheme.yaml',
    );
    return undefined;
  }
  return names?.[taxon.text] ?? taxon.text;
}

/** A free text as an id: small letters, digits and hyphens; a digit in front gets an n before it. */
export function toId(text: string): string {
  const plain = text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
  const id = plain.replaceAll(/[^a-z0-9]+/g, '-').replaceAll(/^-+|-+$/g, '');
  return /^[a-z]/.test(id) ? id : `n${id}`;
}

function locatedRow(value: Specimen, row: TableRow, table: CsvTable): Located<Specimen> {
  const spanOf = (key: PropertyKey | undefined) =>
    (row.facts.get(String(key)) ?? row.facts.get('catalogNumber') ?? row.first).span;
  return {
    value,
    raw: value,
    source: table.source,
    at: (path = []) => spanOf(path[0]),
    atKey: (path, key) => spanOf(path[0] ?? key),
    writtenAt: (path) => row.facts.get(String(path[0]))?.text,
  };
}
