/** A cell of a table: a number is written in full, null and undefined are empty. */
export type Cell = string | number | boolean | null | undefined;

/** A table as CSV by RFC 4180: comma, CRLF, quotes doubled. A text that a spreadsheet would run as a formula is quoted with an apostrophe. */
export function toCsv(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [header, ...rows].map((row) => row.map(cell).join(',')).join('\r\n') + '\r\n';
}

function cell(value: Cell): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
