import { expectId } from '../check/expect-id.ts';
import type { IdSet } from '../check/known.ts';
import type { Report } from '../findings/report.ts';
import { readNumber } from '../source/csv-number.ts';
import type { Cell, CsvTable } from '../source/csv-source.ts';
import type { Span } from '../source/source-text.ts';
import { idPattern } from '../schema/words.ts';
import { findColumns } from './columns.ts';

/** One level of a section, as its table has it. */
export interface LevelRow {
  readonly id: string;
  readonly heightM: number;
  readonly horizon?: string;
  /** Years over which the bones of the level may have gathered. */
  readonly averagingYears?: number;
  readonly source?: string;
  readonly span: Span;
}

const columns = [
  { name: 'level', required: true },
  { name: 'height', units: { m: 1, cm: 0.01 }, required: true },
  { name: 'horizon' },
  { name: 'time-averaging', units: { ka: 1000, years: 1, a: 1 } },
  { name: 'source' },
] as const;

/** Levels from the base up. Unknown beds, equal ids and rows without a height are reported and left out. */
export function readLevels(table: CsvTable, horizons: IdSet, report: Report): LevelRow[] {
  const found = findColumns(table, columns, report);
  const levels: LevelRow[] = [];
  const known = new Set<string>();
  for (const row of table.rows) {
    const cell = (name: string): Cell | undefined => row[found.get(name)?.index ?? -1];
    const number = (name: string) => {
      const own = cell(name);
      const value = own && readNumber(own, report);
      return value === undefined ? undefined : value * found.get(name)!.times;
    };
    const [id, heightM, averagingYears] = [cell('level'), number('height'), number('time-averaging')];
    if (!id || !isNew(id, known, report)) continue;
    if (heightM === undefined) {
      if (found.has('height') && cell('height')?.text === '') missingHeight(id, report);
      continue;
    }
    const horizon = cell('horizon');
    const dated = horizon && horizon.text !== '' ? horizon : undefined;
    if (dated && !expectId('horizon', dated.text, horizons, dated.span, report)) continue;
    levels.push({
      id: id.text,
      heightM,
      span: id.span,
      ...(dated ? { horizon: dated.text } : {}),
      ...(averagingYears === undefined ? {} : { averagingYears }),
      ...(cell('source')?.text ? { source: cell('source')!.text } : {}),
    });
  }
  warnOfOrder(levels, report);
  return levels.sort((a, b) => a.heightM - b.heightM);
}

function isNew(id: Cell, known: Set<string>, report: Report): boolean {
  if (id.text === '') {
    report.add('csv-row', id.span, 'this row names no level', 'fill the column level');
    return false;
  }
  if (!idPattern.test(id.text)) {
    report.add(
      'unsafe-id',
      id.span,
      `level "${id.text}" is no id`,
      'use small letters, digits and single hyphens, beginning with a letter: level-7',
    );
    return false;
  }
  if (known.has(id.text)) {
    report.add(
      'duplicate-id',
      id.span,
      `the level "${id.text}" is given twice`,
      'give one of the two another id, or remove it',
    );
    return false;
  }
  known.add(id.text);
  return true;
}

function missingHeight({ text, span }: Cell, report: Report): void {
  report.add('csv-row', span, `the level "${text}" has no height`, 'fill the column height');
}

function warnOfOrder(levels: readonly LevelRow[], report: Report): void {
  levels.forEach(({ id, heightM, span }, index) => {
    const before = levels[index - 1];
    if (!before || heightM > before.heightM) return;
    report.add(
      'levels-order',
      span,
      heightM === before.heightM
        ? `the levels "${before.id}" and "${id}" are both at ${heightM} m`
        : `the level "${id}" at ${heightM} m follows "${before.id}" at ${before.heightM} m`,
      'list the levels from the base up, each at a height of its own; they are taken by their heights',
    );
  });
}
