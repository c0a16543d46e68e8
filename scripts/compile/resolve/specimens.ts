import { expectId } from '../check/expect-id.ts';
import type { Report } from '../findings/report.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { SheetMapping, Specimen, Taxon } from '../schema/index.ts';
import { hasNamedMonth, reportDate } from '../source/csv-number.ts';
import type { Cell } from '../source/csv-source.ts';
import type { Located } from '../source/yaml-source.ts';
import { authoredReadings } from './authored-readings.ts';
import { digitisingsOf, type Digitising } from './digitising.ts';
import { isLandmarkSheet, readLandmarkSheet, type LandmarkSheet } from './landmark-sheet.ts';
import type { Reading } from './measured.ts';
import { readMeasurementTable, rowsToReadings, type TableRow } from './measurement-table.ts';
import { rowSpecimens } from './row-specimens.ts';
import type { SchemeIndex } from './scheme-index.ts';

/** A specimen with everything that was measured on it, from its record and from every table. */
export interface ResolvedSpecimen {
  record: Located<Specimen>;
  digitisings: Digitising[];
  readings: Map<string, Reading[]>;
}

/** Brings records and tables together; what does not fit is reported at its cell. */
export function resolveSpecimens(
  records: LineageRecords,
  scheme: SchemeIndex,
  report: Report,
): ResolvedSpecimen[] {
  const ofSection = [records.section?.value.levels, records.section?.value.individuals];
  const tables = [...records.sheets].filter(([file]) => !ofSection.includes(file));
  const landmarkSheets = new Map<string, LandmarkSheet>();
  for (const [file, table] of tables) {
    if (isLandmarkSheet(table)) landmarkSheets.set(file, readLandmarkSheet(table, scheme.landmarks, report));
  }
  const rowsOf = new Map<string, TableRow[]>();
  const made: Located<Specimen>[] = [];
  const find = specimenFinder(records.specimens.records);
  for (const [file, table] of tables) {
    if (landmarkSheets.has(file)) continue;
    const mapping = scheme.sheets.get(file);
    const rows = readMeasurementTable(table, mapping, scheme, report);
    if (mapping?.rows === 'specimens') {
      for (const { specimen, row } of rowSpecimens(table, rows, mapping, report)) {
        if (find.byId(specimen.value.id) === undefined && !rowsOf.has(specimen.value.id)) made.push(specimen);
        addRow(rowsOf, specimen.value.id, row);
      }
    } else {
      for (const row of rows) {
        const id = ownerOf(row, find, records, report);
        if (id === undefined) continue;
        checkTaxon(row, find.byId(id)!, { mapping, taxa: records.taxa.records }, report);
        addRow(rowsOf, id, row);
      }
    }
  }
  checkSheetOwners(landmarkSheets, find, records, report);
  made.forEach((specimen) => checkMade(specimen, records, report));
  return [...records.specimens.records, ...made].map((record) => ({
    record,
    digitisings: digitisingsOf(record, landmarkSheets, scheme, report),
    readings: merge(
      authoredReadings(record, scheme.measurements, report),
      rowsToReadings(rowsOf.get(record.value.id) ?? []),
    ),
  }));
}

interface SpecimenFinder {
  byId(id: string): Located<Specimen> | undefined;
  byNumber(catalogNumber: string, institutionCode: string | undefined): Located<Specimen>[];
}

function specimenFinder(specimens: readonly Located<Specimen>[]): SpecimenFinder {
  const ids = new Map(specimens.map((specimen) => [specimen.value.id, specimen]));
  const numbers = new Map<string, Located<Specimen>[]>();
  for (const specimen of specimens) {
    const number = specimen.value.catalogNumber;
    if (number !== undefined) numbers.set(number, [...(numbers.get(number) ?? []), specimen]);
  }
  return {
    byId: (id) => ids.get(id),
    byNumber: (number, institution) =>
      (numbers.get(number) ?? []).filter(
        (specimen) => institution === undefined || specimen.value.institutionCode === institution,
      ),
  };
}

function ownerOf(
  row: TableRow,
  find: SpecimenFinder,
  records: LineageRecords,
  report: Report,
): string | undefined {
  const id = row.facts.get('specimen');
  if (id) {
    if (find.byId(id.text)) return id.text;
    // A record that failed its own check is already told: its rows are not told again.
    if (!records.specimens.declared.has(id.text)) unknownSpecimen(id, id.text, records, report);
    return undefined;
  }
  const number = row.facts.get('catalogNumber');
  if (!number && row.garbled) return undefined;
  if (!number) {
    report.add(
      'csv-row',
      row.first.span,
      'this row names no specimen',
      'fill the column specimen or catalogNumber',
    );
    return undefined;
  }
  const found = find.byNumber(number.text, row.facts.get('institutionCode')?.text);
  if (found.length === 1) return found[0]!.value.id;
  if (found.length === 0 && hasNamedMonth(number.text)) reportDate(number, report);
  else if (found.length === 0)
    report.add(
      'unknown-id',
      number.span,
      `no specimen has the catalogue number "${number.text}"`,
      'record it in specimens.yaml, or map the sheet with rows: specimens',
    );
  else
    report.add(
      'csv-row',
      number.span,
      `${found.length} specimens have the catalogue number "${number.text}"`,
      'add a column institutionCode',
    );
  return undefined;
}

/** A table that also names taxa must name the ones that the specimens' records name: by id, by the sheet's own names, or in full. */
function checkTaxon(
  row: TableRow,
  { value }: Located<Specimen>,
  names: { mapping: SheetMapping | undefined; taxa: readonly Located<Taxon>[] },
  report: Report,
): void {
  const cell = row.facts.get('taxon');
  if (!cell || cell.text === value.taxon || names.mapping?.taxa?.[cell.text] === value.taxon) return;
  const named = names.taxa.find((taxon) => taxon.value.scientificName === cell.text);
  if (named?.value.id === value.taxon) return;
  report.add(
    'csv-row',
    cell.span,
    `${value.id} is "${cell.text}" here and "${value.taxon}" in its record`,
    'correct one of the two, name it under taxa: of the sheet in scheme.yaml, or map the column to ignore there',
  );
}

/** What a museum's table names must be known, as it must be in a record. */
function checkMade(specimen: Located<Specimen>, { taxa, horizons }: LineageRecords, report: Report): void {
  const { taxon, horizon } = specimen.value;
  if (taxa.whole) expectId('taxon', taxon, taxa.declared, specimen.at(['taxon']), report);
  if (horizon !== undefined && horizons.whole)
    expectId('horizon', horizon, horizons.declared, specimen.at(['horizon']), report);
}

function unknownSpecimen(
  cell: Pick<Cell, 'span'>,
  id: string,
  records: LineageRecords,
  report: Report,
): void {
  report.add(
    'unknown-id',
    cell.span,
    () => `unknown specimen: "${id}"${didYouMean(id, records.specimens.declared.keys())}`,
    'name one of specimens.yaml, or add it there',
  );
}

/** Rows of a landmark sheet are of specimens that are known, and whose records name the sheet. */
function checkSheetOwners(
  sheets: ReadonlyMap<string, LandmarkSheet>,
  find: SpecimenFinder,
  records: LineageRecords,
  report: Report,
): void {
  for (const [file, sheet] of sheets) {
    for (const [id, named] of sheet) {
      const owner = find.byId(id)?.value;
      if (!owner) {
        if (!records.specimens.declared.has(id)) unknownSpecimen(named, id, records, report);
      } else if (!owner.landmarks.some((source) => source.sheet.normalize('NFC') === file)) {
        report.add(
          'rows-unused',
          named.span,
          `nothing uses these rows of ${id}: its record does not name "${file}"`,
          `add landmarks: { view: …, sheet: ${file} } to ${id}, or remove the rows`,
        );
      }
    }
  }
}

function addRow(rows: Map<string, TableRow[]>, id: string, row: TableRow): void {
  const own = rows.get(id);
  if (own) own.push(row);
  else rows.set(id, [row]);
}

function merge(one: Map<string, Reading[]>, other: Map<string, Reading[]>): Map<string, Reading[]> {
  for (const [id, readings] of other) one.set(id, [...(one.get(id) ?? []), ...readings]);
  return one;
}
