import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openReport } from '../../scripts/compile/findings/report.ts';
import { readNumber } from '../../scripts/compile/source/csv-number.ts';
import { parseCsv } from '../../scripts/compile/source/csv-source.ts';
import { sourceText } from '../../scripts/compile/source/source-text.ts';

function cells(text: string): { rows: string[][]; codes: string[] } {
  const report = openReport();
  const table = parseCsv(sourceText('t.csv', text), report);
  return {
    rows: [table.header, ...table.rows].map((row) => row.map((cell) => cell.text)),
    codes: report.list().map(({ code }) => code),
  };
}

describe('parseCsv', () => {
  // Rules 1 to 7 of section 2 of RFC 4180 (Shafranovich 2005), with values of our own.
  it.each([
    [
      'a row ends at a line break',
      'a,b\r\n1,2\r\n',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    [
      'the last row needs no line break',
      'a,b\r\n1,2',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    [
      'a cell may be quoted',
      '"a","b"\n"1",2\n',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    [
      'a quoted cell may hold line breaks, commas and quotation marks',
      'a,b\n"x\ny, ""z""",2\n',
      [
        ['a', 'b'],
        ['x\ny, "z"', '2'],
      ],
    ],
    [
      'a byte order mark is no part of the first header',
      '\uFEFFa,b\n1,2\n',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
  ])('%s', (_, text, expected) => {
    expect(cells(text)).toEqual({ rows: expected, codes: [] });
  });

  it('reads what a general library reads from any table that it can hold', () => {
    const cell = fc
      .string({ unit: fc.constantFrom('a', '7', ',', '"', '\n', ' ', 'é', ';') })
      .map((text) => text.trim());
    const table = fc
      .integer({ min: 2, max: 4 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }),
      );
    fc.assert(
      fc.property(table, (rows) => {
        const header = rows[0]!.map((_, index) => `h${index}`);
        const text = [header, ...rows]
          .map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(','))
          .join('\n');
        const reference = parse(text, { trim: false, relax_column_count: true }) as string[][];
        expect(cells(text).rows).toEqual(reference.map((row) => row.map((each) => each.trim())));
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('gives each cell its own place', () => {
    const report = openReport();
    const table = parseCsv(sourceText('t.csv', 'a,b\n"x, y",12\n'), report);
    const { span } = table.rows[0]![1]!;
    expect(span.source.text.slice(span.start, span.end)).toBe('12');
  });
});

describe('readNumber', () => {
  const read = (text: string) => {
    const report = openReport();
    const source = sourceText('t.csv', text);
    return {
      value: readNumber({ text, span: { source, start: 0, end: text.length } }, report),
      codes: report.list().map(({ code }) => code),
    };
  };

  it.each([
    ['12', 12],
    ['-3.50', -3.5],
    ['.5', 0.5],
    ['1e3', 1000],
    ['', undefined],
  ])('takes "%s" for what it is', (text, value) => {
    expect(read(text)).toEqual({ value, codes: [] });
  });

  it.each([
    ['12,5', 'csv-number'],
    ['1.234,5', 'csv-number'],
    ['1 234', 'csv-number'],
    ['1’234', 'csv-number'],
    ['n/a', 'csv-number'],
    ['NaN', 'csv-number'],
    ['Infinity', 'csv-number'],
    ['0x10', 'csv-number'],
    ['12 mm', 'csv-number'],
    ['=A1*2', 'csv-formula'],
    ['#DIV/0!', 'csv-formula'],
    ['2024-03-12', 'csv-date'],
    ['3/12/2024', 'csv-date'],
    ['12-Mar', 'csv-date'],
    ['dic-24', 'csv-date'],
  ])('asks about "%s" instead of guessing', (text, code) => {
    expect(read(text)).toEqual({ value: undefined, codes: [code] });
  });
});
