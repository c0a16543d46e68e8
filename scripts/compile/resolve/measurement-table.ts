import type { Report } from '../findings/report.ts';
import { readNumber } from '../source/csv-number.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';
import type { Measurement, SheetMapping } from '../schema/index.ts';
import { isAllowed } from './authored-readings.ts';
import { quantityOf, type Reading } from './measured.ts';
import { tableColumns, type Column } from './table-columns.ts';
import { millimetresIn } from './units.ts';

/** One row of a table of measurements: its facts by name, and a value with its cell for each measurement. */
export interface TableRow {
  facts: Map<string, Cell>;
  values: Map<string, { value: number; cell: Cell }>;
  first: Cell;
}

/** Reads a table of callipers, one row a specimen or a repeat; values come out in mm, degrees or as counts. */
export function readMeasurementTable(
  table: CsvTable,
  mapping: SheetMapping | undefined,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): TableRow[] {
  const columns = tableColumns(table, mapping, measurements, report);
  return table.rows.map((row) => readRow(row, columns, mapping?.notMeasured ?? [], report));
}

function readRow(
  row: readonly Cell[],
  columns: readonly (Column | undefined)[],
  notMeasured: readonly string[],
  report: Report,
): TableRow {
  const read: TableRow = { facts: new Map(), values: new Map(), first: row[0]! };
  row.forEach((cell, index) => {
    const column = columns[index];
    if (!column) return;
    if ('fact' in column) {
      if (cell.text !== '' && !notMeasured.includes(cell.text)) read.facts.set(column.fact, cell);
      return;
    }
    const value = readValue(cell, column.measurement, notMeasured, report);
    if (value !== undefined)
      read.values.set(column.measurement.id, { value: value * (millimetresIn(column.unit) ?? 1), cell });
  });
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

/** The rows of one specimen as readings: several rows are repeats of one another. */
export function rowsToReadings(rows: readonly TableRow[]): Map<string, Reading[]> {
  const readings = new Map<string, Reading[]>();
  for (const row of rows) {
    for (const [id, { value, cell }] of row.values) {
      const reading = readings.get(id)?.[0];
      if (reading) reading.values.push(value);
      else
        readings.set(id, [
          {
            values: [value],
            approximate: undefined,
            toBreak: undefined,
            from: 'callipers',
            preferred: false,
            span: cell.span,
          },
        ]);
    }
  }
  return readings;
}
