import type { Report } from '../findings/report.ts';
import { didYouMean } from '../findings/suggest.ts';
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
  | { measurement: Measurement; unit: LengthUnit };

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

/** Column by column what a table holds: by its mapping in the scheme, or by headers such as `specimen` and `basal-length (mm)`. */
export function tableColumns(
  table: CsvTable,
  mapping: SheetMapping | undefined,
  measurements: ReadonlyMap<string, Measurement>,
  report: Report,
): (Column | undefined)[] {
  return table.header.map((cell) =>
    mapping ? mappedColumn(cell, mapping, measurements, report) : namedColumn(cell, measurements, report),
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
  const measurement = measurements.get(name);
  if (!measurement) {
    const near = didYouMean(name, [...measurements.keys(), ...facts]);
    report.add(
      'csv-header',
      cell.span,
      `unknown column "${cell.text}"${near}`,
      'name a measurement of scheme.yaml with its unit, such as "basal-length (mm)", or describe the sheet under sheets: in scheme.yaml',
    );
    return undefined;
  }
  if (!match) {
    const example = quantityOf(measurement) === 'length' ? 'mm' : quantityUnits[quantityOf(measurement)];
    report.add(
      'unit-mismatch',
      cell.span,
      `the column "${name}" has no unit`,
      `write its unit in the header: "${name} (${example})"`,
    );
    return undefined;
  }
  const unit = unitWords[match[2]!] ?? (match[2] as LengthUnit); // the pattern allows nothing else
  return fits(cell, measurement, unit, report) ? { measurement, unit } : undefined;
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
