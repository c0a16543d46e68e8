import type { Report } from '../findings/report.ts';
import { isFormula, readNumber, reportFormula } from '../source/csv-number.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';
import type { Measurement, SheetMapping } from '../schema/index.ts';
import { isAllowed } from './authored-readings.ts';
import { quantityOf, type Reading } from './measured.ts';
import type { SchemeIndex } from './scheme-index.ts';
import { namesSpecimens, tableColumns } from './table-columns.ts';
import { addSayings, type RowContext } from './table-sayings.ts';
import { millimetresIn } from './units.ts';

/** One row of a table of measurements: its facts by name, and a value with its cell for each measurement. */
export interface TableRow {
  facts: Map<string, Cell>;
  values: Map<string, TableValue>;
  first: Cell;
  /** True where a formula stands for what the row is of: that is told, and no more of this row. */
  garbled: boolean;
}

/** One measured cell, and what the columns beside it say of it. */
export interface TableValue {
  value: number;
  cell: Cell;
  toBreak?: string;
  approximate?: number;
}

/** Reads a table of callipers, one row a specimen or a repeat; values come out in mm, degrees or as counts. */
export function readMeasurementTable(
  table: CsvTable,
  mapping: SheetMapping | undefined,
  { measurements, landmarks }: Pick<SchemeIndex, 'measurements' | 'landmarks'>,
  report: Report,
): TableRow[] {
  if (mapping?.rows !== 'specimens' && !namesSpecimens(table, mapping, measurements, report)) return [];
  const columns = tableColumns(table, mapping, measurements, report);
  const context = { columns, notMeasured: mapping?.notMeasured ?? [], landmarks, report };
  return table.rows.map((row) => readRow(row, context));
}

function readRow(row: readonly Cell[], context: RowContext): TableRow {
  const { columns, notMeasured, report } = context;
  const read: TableRow = { facts: new Map(), values: new Map(), first: row[0]!, garbled: false };
  row.forEach((cell, index) => {
    const column = columns[index];
    if (!column) return;
    if ('fact' in column) {
      if (isFormula(cell.text)) {
        reportFormula(cell, report);
        read.garbled = true;
      } else if (cell.text !== '' && !notMeasured.includes(cell.text)) read.facts.set(column.fact, cell);
      return;
    }
    if (!('measurement' in column)) return;
    const value = readValue(cell, column.measurement, notMeasured, report);
    if (value !== undefined)
      read.values.set(column.measurement.id, { value: value * (millimetresIn(column.unit) ?? 1), cell });
  });
  addSayings(row, read, context);
  return read;
}

function readValue(
  cell: Cell,
  measurement: Measurement,
  notMeasured: readonly string[],
  report: Report,
): number | undefined {
  const value = readNumber(cell, report, notMeasured);
  if (value === undefined) return undefined;
  const positive = quantityOf(measurement) === 'length' && measurement.along === undefined;
  if (isAllowed(value, positive)) return value;
  report.add(
    'not-a-length',
    cell.span,
    `"${measurement.id}" is ${cell.text}; a length is more than zero`,
    'measure again, or leave the cell empty',
  );
  return undefined;
}

/**
 * The rows of one specimen as readings: several rows are repeats of one another, but lengths up to a break are apart from
 * whole ones. Of repeats that are only about right the largest plus or minus holds for all.
 */
export function rowsToReadings(rows: readonly TableRow[]): Map<string, Reading[]> {
  const readings = new Map<string, Reading[]>();
  for (const row of rows) {
    for (const [id, value] of row.values) {
      const own = readings.get(id) ?? [];
      readings.set(id, own);
      const reading = own.find(({ toBreak }) => toBreak === value.toBreak);
      if (!reading) own.push(readingOf(value));
      else {
        reading.values.push(value.value);
        if (value.approximate !== undefined)
          reading.approximate = Math.max(reading.approximate ?? 0, value.approximate);
      }
    }
  }
  return readings;
}

function readingOf({ value, cell, toBreak, approximate }: TableValue): Reading {
  return { values: [value], approximate, toBreak, from: 'callipers', preferred: false, span: cell.span };
}
