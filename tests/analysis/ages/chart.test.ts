import { expect, test } from 'vitest';
import { chartNames, chartUnits, chartVersion, findChartUnit } from '../../../analysis/ages/index.ts';
import { chartBases } from '../../reference/chart-bases.ts';

test('every base, error and approximate mark is that of the chart of the commission', () => {
  expect(chartVersion).toBe('v2024/12');
  expect(chartUnits).toHaveLength(chartBases.length);
  const runTogether = (name: string) => name.replace(/ (Stage)$/, '').replaceAll(' ', '');
  const ours = new Map(chartUnits.map((unit) => [`${unit.rank} ${runTogether(unit.name)}`, unit]));
  for (const [rank, name, baseMa, error, approximate] of chartBases) {
    const unit = ours.get(`${rank} ${name}`);
    expect(unit, `${rank} ${name}`).toBeDefined();
    expect([unit!.fromMa, unit!.fromErrorMa ?? null, unit!.fromApproximate]).toEqual([
      baseMa,
      error,
      approximate,
    ]);
  }
});

test('units of a rank follow on each other without gaps', () => {
  for (const rank of ['era', 'period', 'epoch', 'stage'] as const) {
    const units = chartUnits.filter((unit) => unit.rank === rank);
    expect(units[0]!.toMa).toBe(0);
    units.slice(1).forEach((unit, index) => {
      expect(unit.toMa).toBe(units[index]!.fromMa);
      expect(unit.toErrorMa).toBe(units[index]!.fromErrorMa);
      expect(unit.fromMa).toBeGreaterThan(unit.toMa);
    });
  }
});

test('every base of a wider unit is the base of a stage', () => {
  const stageBases = new Set(chartUnits.filter(({ rank }) => rank === 'stage').map(({ fromMa }) => fromMa));
  for (const unit of chartUnits) expect(stageBases.has(unit.fromMa), unit.name).toBe(true);
});

test('boundaries that moved since the chart of 2023 have their new ages', () => {
  // International Commission on Stratigraphy, charts v2023/09 and v2024/12
  expect(findChartUnit('Maastrichtian')!.fromMa).toBe(72.2);
  expect(findChartUnit('Lutetian')!.fromMa).toBe(48.07);
  expect(findChartUnit('Berriasian')!.fromMa).toBe(143.1);
  expect(findChartUnit('Aquitanian')!.fromMa).toBe(23.04);
  expect(findChartUnit('Olenekian')!.fromMa).not.toBe(findChartUnit('Anisian')!.fromMa);
});

test.each([
  ['Late Cretaceous', 'Upper Cretaceous'],
  ['early jurassic', 'Lower Jurassic'],
  ['Cretácico superior', 'Upper Cretaceous'],
  ['cretacico tardio', 'Upper Cretaceous'],
  ['Triásico Temprano', 'Lower Triassic'],
  ['Palaeogene', 'Paleogene'],
  [' LUTECIENSE ', 'Lutetian'],
  ['Late Pleistocene', 'Upper Pleistocene'],
  ['Pridoli', 'Pridoli'],
  ['cambrian stage-10', 'Cambrian Stage 10'],
])('%j is found as %s', (written, name) => {
  expect(findChartUnit(written)!.name).toBe(name);
});

test('a name that is not on the chart is not found, and all names on it are', () => {
  expect(findChartUnit('Jurasic')).toBeUndefined();
  expect(findChartUnit('')).toBeUndefined();
  for (const name of chartNames()) expect(findChartUnit(name), name).toBeDefined();
  expect(new Set(chartUnits.map(({ id }) => id)).size).toBe(chartUnits.length);
});
