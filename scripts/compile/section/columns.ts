import { didYouMean, findNearest } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';

/** One column that a table of a section may have: its name, and what one of each unit is in the unit that comes out. */
export interface ColumnRule {
  readonly name: string;
  readonly units?: Readonly<Record<string, number>>;
  readonly required?: boolean;
}

/** Where a column stands in a table, and what its numbers are multiplied by. */
export interface FoundColumn {
  readonly index: number;
  readonly times: number;
}

const withUnit = /^(.+?)\s*[([]([^)\]]+)[)\]]$/;

/** Columns of a table by name; a header that is unknown, lacks its unit or is missing is reported. */
export function findColumns(
  table: CsvTable,
  rules: readonly ColumnRule[],
  report: Report,
): Map<string, FoundColumn> {
  const found = new Map<string, FoundColumn>();
  table.header.forEach((cell, index) => {
    const column = readHeader(cell, rules, report);
    if (column) found.set(column.name, { index, times: column.times });
  });
  const headers = table.header.map(({ text }) => nameOf(text));
  const unknown = headers.filter((header) => !rules.some(({ name }) => name === header));
  for (const { name, units, required } of rules) {
    // A misspelt header is one mistake: the column that is missing for it is not told as well.
    if (!required || headers.includes(name) || findNearest(name, unknown) !== undefined) continue;
    report.add(
      'csv-header',
      table.header[0]?.span ?? { source: table.source, start: 0, end: 1 },
      `there is no column "${name}"`,
      `add it${units ? ` with its unit: "${name} (${Object.keys(units)[0]})"` : ''}`,
    );
  }
  return found;
}

function nameOf(header: string): string {
  return withUnit.exec(header)?.[1] ?? header;
}

function readHeader(
  cell: Cell,
  rules: readonly ColumnRule[],
  report: Report,
): { name: string; times: number } | undefined {
  const [, , unit] = withUnit.exec(cell.text) ?? [];
  const name = nameOf(cell.text);
  const rule = rules.find((each) => each.name === name);
  const names = rules.map((each) => each.name);
  if (!rule) {
    report.add(
      'csv-header',
      cell.span,
      `unknown column "${cell.text}"${didYouMean(name, names)}`,
      `this table has ${names.join(', ')}`,
    );
    return undefined;
  }
  if (!rule.units) return { name, times: 1 };
  const times = unit === undefined ? undefined : rule.units[unit];
  if (times !== undefined) return { name, times };
  report.add(
    'unit-mismatch',
    cell.span,
    unit === undefined ? `the column "${name}" has no unit` : `"${name}" cannot be given in ${unit}`,
    `write one of these in the header: ${Object.keys(rule.units)
      .map((each) => `"${name} (${each})"`)
      .join(', ')}`,
  );
  return undefined;
}
