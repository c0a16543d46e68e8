import { expectId } from '../check/expect-id.ts';
import type { Report } from '../findings/report.ts';
import { readNumber } from '../source/csv-number.ts';
import type { Cell } from '../source/csv-source.ts';
import type { LengthUnit } from '../schema/index.ts';
import type { TableRow, TableValue } from './measurement-table.ts';
import type { Column } from './table-columns.ts';
import { millimetresIn } from './units.ts';

/** What reading a row needs besides its cells. */
export interface RowContext {
  columns: readonly (Column | undefined)[];
  notMeasured: readonly string[];
  landmarks: ReadonlyMap<string, unknown>;
  report: Report;
}

/**
 * Adds to the values of a row what its other cells say of them: the landmark up to whose break a length was taken, and
 * the 95% plus or minus of a value that is only about right. An empty cell says nothing.
 */
export function addSayings(row: readonly Cell[], read: TableRow, context: RowContext): void {
  row.forEach((cell, index) => {
    const column = context.columns[index];
    if (!column || 'fact' in column || 'measurement' in column || isEmpty(cell, context)) return;
    const of = 'toBreak' in column ? column.toBreak : column.approximate;
    const value = read.values.get(of);
    if (!value) return wantsValue(cell, of, row, context);
    if ('toBreak' in column) addBreak(cell, value, context);
    else addPlusMinus(cell, value, column.unit ?? unitOf(of, context), context);
  });
}

function isEmpty({ text }: Cell, { notMeasured }: RowContext): boolean {
  return text === '' || notMeasured.includes(text);
}

/** A cell that speaks of a value that was refused is not told as well; of one that is empty it is. */
function wantsValue(cell: Cell, of: string, row: readonly Cell[], context: RowContext): void {
  const place = context.columns.findIndex(
    (each) => each && 'measurement' in each && each.measurement.id === of,
  );
  if (place < 0 || !isEmpty(row[place]!, context)) return;
  context.report.add(
    'csv-row',
    cell.span,
    `"${cell.text}" speaks of "${of}", which this row does not give`,
    'give the value, or empty this cell',
  );
}

function addBreak(cell: Cell, value: TableValue, { landmarks, report }: RowContext): void {
  const known = { has: (id: string) => landmarks.has(id), keys: () => landmarks.keys() };
  if (expectId('landmark', cell.text, known, cell.span, report)) value.toBreak = cell.text;
}

function addPlusMinus(
  cell: Cell,
  value: TableValue,
  unit: LengthUnit | undefined,
  context: RowContext,
): void {
  const plusMinus = readNumber(cell, context.report);
  if (plusMinus === undefined) return;
  if (plusMinus > 0) {
    value.approximate = plusMinus * ((unit && millimetresIn(unit)) ?? 1);
    return;
  }
  context.report.add(
    'approximate-without-error',
    cell.span,
    `the plus or minus is ${cell.text}`,
    'give the 95% plus or minus, more than zero; leave the cell empty for an exact value',
  );
}

function unitOf(measurement: string, { columns }: RowContext): LengthUnit | undefined {
  const column = columns.find((each) => each && 'measurement' in each && each.measurement.id === measurement);
  return column && 'unit' in column ? column.unit : undefined;
}
