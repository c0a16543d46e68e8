import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { toCsv } from '../../../components/data/csv.ts';
import { specimensCsv } from '../../../components/data/specimens-csv.ts';
import { valuesCsv } from '../../../components/data/values-csv.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';

test('a table reads back as it was by a general CSV reader (RFC 4180)', () => {
  const rows = [['plain', 'with, comma', 'with "quotes"', 'with\r\nbreak', '', '12.5']];
  const header = ['a', 'b', 'c', 'd', 'e', 'f'];
  expect(parse(toCsv(header, rows), { record_delimiter: '\r\n' })).toEqual([header, ...rows]);
});

test('a text that a spreadsheet would run as a formula is disarmed, a negative number is not', () => {
  expect(toCsv(['a'], [['=1+1'], [-2]])).toBe("a\r\n'=1+1\r\n-2\r\n");
});

test('every row of an invented lineage says that it is invented, and carries its status', () => {
  const rows: Record<string, string>[] = parse(valuesCsv(inventedLineage(risingTips)), { columns: true });
  expect(rows).toHaveLength(risingTips.length);
  expect(rows.every((row) => row['invented'] === 'true')).toBe(true);
  const faceless = rows.find((row) => row['taxon'] === 'faceless')!;
  expect(faceless).toMatchObject({ status: 'inferred', intervalLow: '28', intervalHigh: '56' });
  expect(rows.find((row) => row['taxon'] === 'broken')).toMatchObject({
    status: 'bounded',
    estimate: '',
    atLeast: '31',
  });
});

test('a lineage without specimens gives a table with a header alone', () => {
  expect(specimensCsv(inventedLineage(risingTips)).split('\r\n')).toHaveLength(2);
});
