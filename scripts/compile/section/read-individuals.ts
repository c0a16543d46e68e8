import { expectId } from '../check/expect-id.ts';
import type { IdSet } from '../check/known.ts';
import type { Report } from '../findings/report.ts';
import type { Section } from '../schema/index.ts';
import { readNumber } from '../source/csv-number.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';
import { findColumns, type FoundColumn } from './columns.ts';

/** One individual of a section with its one value. */
export interface Individual {
  readonly catalogNumber: string;
  readonly level: string;
  readonly wear: string;
  readonly valueMm: number;
  /** Its crown is worn: it was at least as high. */
  readonly atLeast: boolean;
}

/** What the rows of a table of individuals are read by. */
export interface IndividualRules {
  readonly section: Section;
  /** Id of the measurement of the section's trait. */
  readonly measurement: string;
  readonly levels: IdSet;
  readonly stages: IdSet;
}

/**
 * Individuals in the order of their table. A second row of one individual, another tooth, a level or a stage of wear that
 * is not known, and a height that is none are reported and left out; a row without a value counts for nothing.
 */
export function readIndividuals(table: CsvTable, rules: IndividualRules, report: Report): Individual[] {
  const found = findColumns(
    table,
    [
      { name: 'catalogNumber', required: true },
      { name: 'level', required: true },
      { name: 'tooth', required: true },
      { name: 'wear', required: true },
      { name: rules.measurement, units: { mm: 1, cm: 10, in: 25.4 }, required: true },
    ],
    report,
  );
  if (found.size < 5) return [];
  const seen = new Set<string>();
  return table.rows.flatMap((row) => readRow(row, found, rules, seen, report) ?? []);
}

function readRow(
  row: readonly Cell[],
  found: ReadonlyMap<string, FoundColumn>,
  { section, measurement, levels, stages }: IndividualRules,
  seen: Set<string>,
  report: Report,
): Individual | undefined {
  const cell = (name: string) => row[found.get(name)!.index]!;
  const [number, level, tooth, wear] = [cell('catalogNumber'), cell('level'), cell('tooth'), cell('wear')];
  const height = cell(measurement);
  if (number.text === '') {
    report.add('csv-row', number.span, 'this row names no individual', 'fill the column catalogNumber');
    return undefined;
  }
  if (tooth.text !== section.tooth) {
    otherTooth(tooth, number, section.tooth, report);
    return undefined;
  }
  const known = [
    expectId('level', level.text, levels, level.span, report),
    expectId('wear stage', wear.text, stages, wear.span, report),
  ];
  if (seen.has(number.text)) {
    twice(number, report);
    return undefined;
  }
  seen.add(number.text);
  const value = readNumber(height, report);
  if (value === undefined || known.includes(false)) return undefined;
  if (!(value > 0)) {
    notALength(height, number, measurement, report);
    return undefined;
  }
  return {
    catalogNumber: number.text,
    level: level.text,
    wear: wear.text,
    valueMm: value * found.get(measurement)!.times,
    atLeast: section.wear.find(({ id }) => id === wear.text)!.crown === 'worn',
  };
}

function otherTooth(tooth: Cell, number: Cell, wanted: string, report: Report): void {
  report.add(
    'tooth-other',
    tooth.span,
    `${number.text} is "${tooth.text}", and this section compares ${wanted}: it is left out`,
    'keep other positions in a table of their own',
  );
}

function twice(number: Cell, report: Report): void {
  report.add(
    'counted-twice',
    number.span,
    `${number.text} has a value already: an individual counts once`,
    'keep one row an individual; where left and right are there, the better preserved',
  );
}

function notALength(height: Cell, number: Cell, measurement: string, report: Report): void {
  report.add(
    'not-a-length',
    height.span,
    `"${measurement}" of ${number.text} is ${height.text}; a length is more than zero`,
    'measure again, or leave the cell empty',
  );
}
