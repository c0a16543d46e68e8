import type { Report } from '../findings/report.ts';
import type { SourceText, Span } from './source-text.ts';

/** One cell of a table: its text without quotation marks, and where it stands. */
export interface Cell {
  text: string;
  span: Span;
  /** True for a cell whose quotation mark is never closed: where its row ends is not known. */
  open?: boolean;
}

/** A table with its header row apart; every row has as many cells as the header. */
export interface CsvTable {
  source: SourceText;
  header: Cell[];
  rows: Cell[][];
}

/**
 * Parses comma-separated values by RFC 4180 (quotation marks doubled inside quoted cells; blank lines skipped).
 * Mistakes of form go to the report; rows that do not fit the header are left out of the table.
 */
export function parseCsv(source: SourceText, report: Report): CsvTable {
  const rows = tokenize(source, report).filter((row) => row.length > 1 || row[0]!.text.trim() !== '');
  const [header = [], ...body] = rows;
  if (!checkHeader(header, source, report)) return { source, header: [], rows: [] };
  const fits = body.filter((row) => !row.some((cell) => cell.open) && checkWidth(row, header.length, report));
  return { source, header: header.map(trimmed), rows: fits.map((row) => row.map(trimmed)) };
}

function tokenize(source: SourceText, report: Report): Cell[][] {
  const { text } = source;
  const rows: Cell[][] = [];
  let row: Cell[] = [];
  let at = 0;
  while (at <= text.length) {
    const cell = text[at] === '"' ? quotedCell(source, at, report) : plainCell(source, at);
    row.push(cell);
    at = cell.span.end;
    if (text[at] === ',') at++;
    else {
      rows.push(row);
      row = [];
      at++;
    }
  }
  return rows;
}

function plainCell(source: SourceText, start: number): Cell {
  const { text } = source;
  let end = start;
  while (end < text.length && text[end] !== ',' && text[end] !== '\n') end++;
  return { text: text.slice(start, end), span: { source, start, end } };
}

function quotedCell(source: SourceText, start: number, report: Report): Cell {
  const { text } = source;
  let end = start + 1;
  while (end < text.length && !(text[end] === '"' && text[end + 1] !== '"')) end += text[end] === '"' ? 2 : 1;
  if (end >= text.length) {
    const span = { source, start, end: start + 1 };
    report.add('csv-quote', span, 'a quotation mark is never closed', 'close it, or remove it');
    return { text: text.slice(start + 1), span: { source, start, end: text.length }, open: true };
  }
  const inside = text.slice(start + 1, end).replaceAll('""', '"');
  let after = end + 1;
  while (after < text.length && text[after] !== ',' && text[after] !== '\n') after++;
  if (text.slice(end + 1, after).trim() !== '') {
    const span = { source, start: end + 1, end: after };
    report.add(
      'csv-quote',
      span,
      'text follows a closing quotation mark',
      'double the quotation marks that belong to the text',
    );
  }
  return { text: inside, span: { source, start, end: after } };
}

function trimmed(cell: Cell): Cell {
  return { ...cell, text: cell.text.trim() };
}

/** Checks the header row; false when it is no header of a comma-separated table at all. */
function checkHeader(header: readonly Cell[], source: SourceText, report: Report): boolean {
  if (header.length === 0) {
    report.add(
      'csv-header',
      { source, start: 0, end: 1 },
      'the table is empty',
      'give it a header row and at least one row',
    );
    return false;
  }
  if (header.length === 1 && /[;\t]/.test(header[0]!.text)) {
    const found = header[0]!.text.includes(';') ? 'semicolons' : 'tabs';
    report.add(
      'csv-separator',
      header[0]!.span,
      `cells are separated by ${found}`,
      'save the table as comma-separated values in UTF-8',
    );
    return false;
  }
  const seen = new Set<string>();
  for (const cell of header) {
    const name = cell.text.trim();
    if (name === '')
      report.add('csv-header', cell.span, 'a column has no header', 'name the column, or remove it');
    else if (seen.has(name))
      report.add('csv-header', cell.span, `two columns are called "${name}"`, 'rename or remove one of them');
    seen.add(name);
  }
  return true;
}

function checkWidth(row: readonly Cell[], width: number, report: Report): boolean {
  if (row.length === width) return true;
  const last = row[Math.min(row.length, width) - 1] ?? row[0]!;
  const span = row.length > width ? row[width]!.span : last.span;
  const advice =
    row.length > width
      ? 'quote a cell that holds a comma, and write decimals with a point'
      : 'add the missing commas';
  report.add('csv-ragged', span, `this row has ${row.length} cells where the header has ${width}`, advice);
  return false;
}
