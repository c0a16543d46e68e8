import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';
import { compileChanged, replaced } from './fixtures/changed-lineage.ts';

const folder = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const { compiled } = await compileLineage(folder);
const trendOf = (id: string) => compiled!.traits.find((trait) => trait.id === id)!.trend!;

test('a trend stands for every tree and rule of dating, the reference tree and its own rule first', () => {
  const { rows } = trendOf('nasal-position');
  expect(rows.map(({ tree, dating }) => `${tree} ${dating}`)).toEqual([
    'main equal-share',
    'main minimum-branch',
    'rival equal-share',
    'rival minimum-branch',
  ]);
  for (const { slope, ages } of rows) {
    expect(slope!.interval[0]).toBeLessThan(slope!.perMyr);
    expect(slope!.interval[1]).toBeGreaterThan(slope!.perMyr);
    expect(ages.rising + ages.falling).toBe(ages.sets);
  }
});

test('what is said follows from the rows: the reference test at five in a hundred, and one sign on all', () => {
  for (const { trend } of compiled!.traits) {
    const { verdict, rows } = trend!;
    const signs = new Set(rows.map(({ slope }) => Math.sign(slope!.perMyr)));
    const told = rows[0]!.slope!.pValue <= 0.05 && signs.size === 1;
    expect(verdict).toBe(told ? (signs.has(1) ? 'rises' : 'falls') : 'cannot-tell');
  }
});

test('the line runs from the oldest measured taxon to the youngest and never leaves its interval', () => {
  const { line } = trendOf('condylobasal-length');
  expect(line.at(-1)!.at).toBe(0);
  expect(line[0]!.at).toBeGreaterThan(45);
  for (const { median, interval } of line) {
    expect(interval[0]).toBeLessThan(median);
    expect(interval[1]).toBeGreaterThan(median);
  }
});

test('ranks across taxa are a description judged by simulation, the same at every compile', async () => {
  const { rank } = trendOf('nasal-position');
  expect(Math.abs(rank!.tau)).toBeLessThanOrEqual(1);
  expect(rank).toEqual((await compileLineage(folder)).compiled!.traits[0]!.trend!.rank);
});

const smallTrend = async (changes: Parameters<typeof compileChanged>[0]) => {
  const { compiled: small, findings } = await compileChanged(changes);
  if (!small) throw new Error(findings.map(({ message }) => message).join('\n'));
  return small.traits[0]!.trend!;
};

test('three measured taxa are too few: nothing can be told, with the reason', async () => {
  const trend = await smallTrend({
    'sheets/callipers.csv': (text) => text.replace('hm-5,29.4,70.2\n', '').replace('hm-6,34.1,80.3\n', ''),
  });
  expect(trend).toMatchObject({ verdict: 'cannot-tell', reason: 'fewer-than-four', line: [] });
  expect(trend.rank).toBeUndefined();
});

test('taxa of one age cannot trend: nothing can be told, with the reason', async () => {
  const trend = await smallTrend({
    'horizons.yaml':
      '- { id: lower-shelf, formation: Shelf, age: { from: 16.0, to: 14.0 }, sources: [hopper-notes] }\n' +
      '- { id: upper-shelf, formation: Shelf, bed: "4", age: { from: 16.0, to: 14.0 } }\n' +
      '- { id: gorse-clay, formation: Gorse Clay, age: { from: 16.0, to: 14.0 } }\n',
    'taxa.yaml': replaced(', living: true', ''),
    'specimens.yaml': (text) =>
      text.replaceAll(
        '  basisOfRecord: PreservedSpecimen\n  preparations: skeleton\n',
        '  horizon: gorse-clay\n',
      ),
  });
  expect(trend).toMatchObject({ verdict: 'cannot-tell', reason: 'predictor-does-not-vary' });
});

test('values that are all the same have no trend to tell', async () => {
  const same = (id: string) => `${id},30,60`;
  const trend = await smallTrend({
    'specimens.yaml': (text) => text.replaceAll(/  (measurements|landmarks):[\s\S]*?(?=- id:)/g, ''),
    'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${['hm-1', 'hm-3', 'hm-4', 'hm-5', 'hm-6'].map(same).join('\n')}\n`,
  });
  expect(trend).toMatchObject({ verdict: 'cannot-tell', reason: 'no-scatter', taxa: 5 });
});
