import { isPlaceColumn } from '../check/place-words.ts';
import type { Report } from '../findings/report.ts';
import { didYouMean, findNearest } from '../findings/suggest.ts';
import type { LengthUnit, Measurement, SheetMapping } from '../schema/index.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';
import { quantityUnits, quantityWords } from './authored-readings.ts';
import { quantityOf } from './measured.ts';
import { unitFits } from './units.ts';

/** What one column of a table of measurements holds. */
export type Column =
  | {
      fact:
        | 'specimen'
        | 'catalogNumber'
        | 'institutionCode'
        | 'taxon'
        | 'horizon'
        | 'sex'
        | 'lifeStage'
        | 'repeat';
    }
  | { measurement: Measurement; unit: LengthUnit }
  /** The landmark up to whose break a measurement was taken. */
  | { toBreak: string }
  /** The plus or minus of a measurement that is only about right; without a unit, that of its measurement. */
  | { approximate: string; unit: LengthUnit | undefined };

const facts = [
  'specimen',
  'catalogNumber',
  'institutionCode',
  'taxon',
  'horizon',
  'sex',
  'lifeStage',
  'repeat',
] as const;
const withUnit = /^(.+?)\s*[([](mm|cm|m|in|deg|degrees|°|count|n)[)\]]$/;
const unitWords: Record<string, LengthUnit> = { deg: 'degrees', '°': 'degrees', n: 'count' };

/**
 * Whether a table says which specimen each of its rows is of; where it does not, that is told once and not at every row.
 * A table without one header that is known is a museum's own, and nothing else is told of it.
 */
export function namesSpecimens(
  table: CsvTable,
  mapping: SheetMapping | undefined,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): boolean {
  const headers = table.header.map(({ text }) => text);
  const named = mapping ? headers.map((header) => mapping.columns[header]) : headers;
  if (named.some((name) => name === 'specimen' || name === 'catalogNumber')) return true;
  // A table that could not be read was told of where it was.
  if (headers.length === 0) return false;
  const isKnown = (header: string) =>
    facts.some((fact) => fact === header) || measurements.has(withUnit.exec(header)?.[1] ?? header);
  if (!mapping && headers.some(isKnown)) {
    tableColumns(table, mapping, measurements, report);
    // A misspelt header is told there, and is the one mistake.
    if (headers.some((header) => findNearest(header, ['specimen', 'catalogNumber']) !== undefined))
      return false;
  }
  report.add(
    'csv-header',
    table.header[0]!.span,
    'no column says which specimen a row is of',
    mapping
      ? 'map a column to specimen or catalogNumber under sheets: in scheme.yaml, or say rows: specimens where each row is one'
      : 'head a column specimen or catalogNumber, or say under sheets: in scheme.yaml what the columns of this file hold',
  );
  return false;
}

/** Column by column what a table holds: by its mapping in the scheme, or by headers such as `specimen` and `basal-length (mm)`. */
export function tableColumns(
  table: CsvTable,
  mapping: SheetMapping | undefined,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): (Column | undefined)[] {
  const columns = table.header.map((cell) =>
    mapping ? mappedColumn(cell, mapping, measurements, report) : namedColumn(cell, measurements, report),
  );
  columns.forEach((column, index) => checkPartner(column, columns, table.header[index]!, report));
  return columns;
}

/** A column that says something of a measurement needs the column of that measurement beside it. */
function checkPartner(
  column: Column | undefined,
  columns: readonly (Column | undefined)[],
  cell: Cell,
  report: Report,
): void {
  const of =
    column &&
    ('toBreak' in column ? column.toBreak : 'approximate' in column ? column.approximate : undefined);
  if (of === undefined) return;
  if (columns.some((each) => each && 'measurement' in each && each.measurement.id === of)) return;
  report.add(
    'csv-header',
    cell.span,
    `the table has no column for "${of}", of which "${cell.text}" speaks`,
    `add a column such as "${of} (mm)", or remove this one`,
  );
}

function mappedColumn(
  cell: Cell,
  mapping: SheetMapping,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): Column | undefined {
  const given = mapping.columns[cell.text];
  if (given === undefined) {
    report.add(
      'csv-header',
      cell.span,
      `the column "${cell.text}" is not described in scheme.yaml${didYouMean(cell.text, Object.keys(mapping.columns))}`,
      'add it to columns of this sheet, with ignore if it is not used',
    );
    return undefined;
  }
  if (given === 'ignore') return undefined;
  if (typeof given === 'string') return { fact: given };
  if ('toBreak' in given) return measurements.has(given.toBreak) ? given : undefined;
  if ('approximate' in given)
    return measurements.has(given.approximate)
      ? { approximate: given.approximate, unit: given.unit }
      : undefined;
  const measurement = measurements.get(given.measurement);
  // A measurement that does not exist is told once, at the mapping.
  return measurement && fits(cell, measurement, given.unit, report)
    ? { measurement, unit: given.unit }
    : undefined;
}

function namedColumn(
  cell: Cell,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): Column | undefined {
  const fact = facts.find((each) => each === cell.text);
  if (fact) return { fact };
  const match = withUnit.exec(cell.text);
  const name = match ? match[1]! : cell.text;
  const unit = match ? (unitWords[match[2]!] ?? (match[2] as LengthUnit)) : undefined; // the pattern allows nothing else
  const said = /^(.+)\.(toBreak|approximate)$/.exec(name);
  if (said && measurements.has(said[1]!))
    return sayingColumn(cell, said[1]!, said[2]!, unit, measurements, report);
  const measurement = measurements.get(name);
  if (!measurement) {
    // A column of exact places is told as such, not also as unknown.
    if (isPlaceColumn(cell.text)) return undefined;
    const saying = [...measurements.keys()].flatMap((id) => [`${id}.toBreak`, `${id}.approximate`]);
    const near = didYouMean(name, [...measurements.keys(), ...facts, ...(name.includes('.') ? saying : [])]);
    report.add(
      'csv-header',
      cell.span,
      `unknown column "${cell.text}"${near}`,
      'name a measurement of scheme.yaml with its unit, such as "basal-length (mm)", or describe the sheet under sheets: in scheme.yaml',
    );
    return undefined;
  }
  if (!unit) {
    const example = quantityOf(measurement) === 'length' ? 'mm' : quantityUnits[quantityOf(measurement)];
    report.add(
      'unit-mismatch',
      cell.span,
      `the column "${name}" has no unit`,
      `write its unit in the header: "${name} (${example})"`,
    );
    return undefined;
  }
  return fits(cell, measurement, unit, report) ? { measurement, unit } : undefined;
}

function sayingColumn(
  cell: Cell,
  of: string,
  what: string,
  unit: LengthUnit | undefined,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): Column | undefined {
  if (what === 'toBreak') return { toBreak: of };
  if (unit && !fits(cell, measurements.get(of)!, unit, report)) return undefined;
  return { approximate: of, unit };
}

function fits(cell: Cell, measurement: Measurement, unit: LengthUnit, report: Report): boolean {
  const quantity = quantityOf(measurement);
  if (unitFits(unit, quantity)) return true;
  report.add(
    'unit-mismatch',
    cell.span,
    `"${measurement.id}" is ${quantityWords[quantity]}, and ${unit} cannot say it`,
    `give it in ${quantityUnits[quantity]}`,
  );
  return false;
}
