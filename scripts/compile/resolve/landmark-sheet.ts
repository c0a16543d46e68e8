import type { Report } from '../findings/report.ts';
import { didYouMean } from '../findings/suggest.ts';
import { readNumber } from '../source/csv-number.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';
import type { Span } from '../source/source-text.ts';

/** One digitised point: coordinates in the units of its sheet, and where they stand. */
export interface SheetPoint {
  at: number[];
  span: Span;
}

/** One digitising of one specimen: landmark id to point. */
export type Repeat = Map<string, SheetPoint>;

/** What a sheet of landmarks says of one specimen: its repeats in the order of the sheet, and where it is first named. */
export interface SheetSpecimen {
  span: Span;
  repeats: Repeat[];
}

/** A sheet of landmarks by specimen id. */
export type LandmarkSheet = Map<string, SheetSpecimen>;

const coordinate = /^(.+)\.([xyz])$/;

/** True for a table of landmarks, wide (`prosthion.x`) or long (`landmark,x,y`). */
export function isLandmarkSheet(table: CsvTable): boolean {
  const names = table.header.map((cell) => cell.text);
  return (
    names.includes('specimen') && (names.includes('landmark') || names.some((name) => coordinate.test(name)))
  );
}

/** Reads a table of landmarks in either form. */
export function readLandmarkSheet(
  table: CsvTable,
  landmarks: ReadonlyMap<string, unknown>,
  report: Report,
): LandmarkSheet {
  const columns = new Map(table.header.map((cell, index) => [cell.text, index]));
  const rows = new Map<string, { span: Span; repeats: Map<string, Repeat> }>();
  const readRow = columns.has('landmark')
    ? longReader(table, columns, landmarks, report)
    : wideReader(table, landmarks, report);
  for (const row of table.rows) {
    const { text: specimen, span } = row[columns.get('specimen')!]!;
    const repeat = columns.has('repeat') ? row[columns.get('repeat')!]!.text : '1';
    const own = rows.get(specimen) ?? { span, repeats: new Map<string, Repeat>() };
    const points = own.repeats.get(repeat) ?? new Map<string, SheetPoint>();
    for (const [landmark, point] of readRow(row)) addPoint(points, landmark, point, report);
    own.repeats.set(repeat, points);
    rows.set(specimen, own);
  }
  return new Map([...rows].map(([id, { span, repeats }]) => [id, { span, repeats: [...repeats.values()] }]));
}

type RowReader = (row: readonly Cell[]) => [string, SheetPoint][];

function wideReader(table: CsvTable, landmarks: ReadonlyMap<string, unknown>, report: Report): RowReader {
  const groups = new Map<string, number[]>();
  const unknown = new Set<string>();
  table.header.forEach((cell, index) => {
    if (cell.text === 'specimen' || cell.text === 'repeat') return;
    const match = coordinate.exec(cell.text);
    if (!match) {
      report.add(
        'csv-header',
        cell.span,
        `unknown column "${cell.text}" in a sheet of landmarks`,
        'name columns specimen, repeat, and LANDMARK.x, LANDMARK.y',
      );
    } else if (unknown.has(match[1]!)) {
      // Its x and its y bear one name, which is told of once.
    } else if (knownLandmark(match[1]!, cell, landmarks, report)) {
      const group = groups.get(match[1]!) ?? [];
      group['xyz'.indexOf(match[2]!)] = index;
      groups.set(match[1]!, group);
    } else unknown.add(match[1]!);
  });
  // A misspelt column leaves its partner alone: that is one mistake.
  if (unknown.size === 0) for (const [landmark, group] of groups) checkGroup(landmark, group, table, report);
  return (row) =>
    [...groups].flatMap(([landmark, group]) => {
      const point = readPoint(
        group.map((index) => row[index]!),
        report,
      );
      return point ? [[landmark, point] as [string, SheetPoint]] : [];
    });
}

function checkGroup(
  landmark: string,
  group: readonly (number | undefined)[],
  table: CsvTable,
  report: Report,
): void {
  const cell = table.header[group.find((index) => index !== undefined)!]!;
  if (group[0] !== undefined && group[1] !== undefined) return;
  report.add(
    'csv-header',
    cell.span,
    `the landmark "${landmark}" has not both ${landmark}.x and ${landmark}.y`,
    'add the missing column',
  );
}

function longReader(
  table: CsvTable,
  columns: ReadonlyMap<string, number>,
  landmarks: ReadonlyMap<string, unknown>,
  report: Report,
): RowReader {
  const allowed = ['specimen', 'repeat', 'landmark', 'x', 'y', 'z'];
  for (const cell of table.header) {
    if (allowed.includes(cell.text) || cell.text === '') continue;
    report.add(
      'csv-header',
      cell.span,
      `unknown column "${cell.text}" in a sheet of landmarks${didYouMean(cell.text, allowed)}`,
      `the columns are ${allowed.join(', ')}`,
    );
  }
  const coordinates = ['x', 'y', 'z'].flatMap((name) => columns.get(name) ?? []);
  if (!columns.has('x') || !columns.has('y'))
    report.add('csv-header', table.header[0]!.span, 'a sheet of landmarks needs columns x and y', 'add them');
  return (row) => {
    const cell = row[columns.get('landmark')!]!;
    if (!columns.has('x') || !columns.has('y') || !knownLandmark(cell.text, cell, landmarks, report))
      return [];
    const point = readPoint(
      coordinates.map((index) => row[index]!),
      report,
    );
    return point ? [[cell.text, point]] : [];
  };
}

function knownLandmark(
  id: string,
  cell: Cell,
  landmarks: ReadonlyMap<string, unknown>,
  report: Report,
): boolean {
  if (landmarks.has(id)) return true;
  report.add(
    'unknown-id',
    cell.span,
    () => `unknown landmark: "${id}"${didYouMean(id, landmarks.keys())}`,
    'name a landmark of scheme.yaml, or define it there',
  );
  return false;
}

/** A point has x and y; z may be empty in a table that holds pictures and scans together. */
function readPoint(cells: readonly (Cell | undefined)[], report: Report): SheetPoint | undefined {
  const [x, y, z] = cells;
  if (!x || !y || (isEmpty(x) && isEmpty(y) && isEmpty(z))) return undefined;
  const span = { ...x.span, end: (z ?? y).span.end };
  if (isEmpty(x) || isEmpty(y)) {
    report.add(
      'csv-row',
      span,
      `a point has no ${isEmpty(x) ? 'x' : 'y'}`,
      'give every coordinate, or leave all of them empty for a point that is not there',
    );
    return undefined;
  }
  const filled = isEmpty(z) ? [x, y] : [x, y, z!];
  const at = filled.map((cell) => readNumber(cell, report));
  return at.every((value) => value !== undefined) ? { at: at as number[], span } : undefined;
}

function isEmpty(cell: Cell | undefined): boolean {
  return cell === undefined || cell.text === '';
}

function addPoint(points: Repeat, landmark: string, point: SheetPoint, report: Report): void {
  if (points.has(landmark)) {
    report.add(
      'csv-row',
      point.span,
      `"${landmark}" stands twice in one repeat of one specimen`,
      'number the repeats in a column called repeat, or remove one',
    );
    return;
  }
  points.set(landmark, point);
}
