import { resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { CompiledLineage } from '../../../scripts/compile/contract.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

let lineage: CompiledLineage;
beforeAll(async () => {
  const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../../content/reed-trunks'));
  lineage = compiled!;
});

const drawing = (taxon: string) => lineage.drawings.find((each) => each.taxon === taxon)!;

describe('shapes for drawings', () => {
  test('stand in the frame of the measured line: snout tip at zero, eye rim at hundred, the reading at the value', () => {
    const [trait] = lineage.traits;
    const measured = trait!.values.filter((value) => value.status === 'measured');
    expect(measured.length).toBeGreaterThan(15);
    for (const value of measured) {
      const { points } = drawing(value.taxon);
      expect(points['prosthion']!.at[0]).toBeCloseTo(0, 9);
      expect(points['anterior-orbital-rim']!.at[0]).toBeCloseTo(100, 9);
      expect(Math.abs(points['naris-posterior']!.at[0] - value.estimate!), value.taxon).toBeLessThan(1);
    }
  });

  test('tell points that were digitised from points that relatives lend', () => {
    const whole = drawing('calamorhina-vivax');
    expect(Object.values(whole.points).every(({ basis }) => basis === 'digitised')).toBe(true);
    const faceless = drawing('calathorhina-mira');
    expect(faceless.points['naris-posterior']!.basis).toBe('relatives');
    expect(faceless.points['inion']!.basis).toBe('digitised');
  });

  test('start a broken skull at its break, with the lost tip before zero', () => {
    const broken = drawing('limnorhina-fracta');
    expect(broken.broken).toBe(true);
    expect(broken.points['prosthion']).toMatchObject({ basis: 'relatives' });
    expect(broken.points['prosthion']!.at[0]).toBeLessThan(0);
    expect(Math.max(...broken.breaks.flatMap(({ points }) => points).map(([x]) => x))).toBeCloseTo(0, 9);
    const limit = lineage.traits[0]!.values.find((value) => value.taxon === 'limnorhina-fracta')!.limits!;
    expect(broken.points['naris-posterior']!.at[0]).toBeGreaterThanOrEqual(limit.atLeast!);
  });

  test('have the scale of their bones: a hundred units are the measured whole, in mm', () => {
    const broken = drawing('limnorhina-fracta');
    const whole = lineage.specimens.find(({ id }) => id === 'obm-1183')!;
    const limit = lineage.traits[0]!.values.find((value) => value.taxon === broken.taxon)!.limits!;
    expect(whole.mirrored).toBe(false);
    expect(broken.mmPerUnit! * 100).toBeCloseTo(limit.working!.whole!.mm, 0);
    const vivax = drawing('calamorhina-vivax');
    const lengths = vivax.specimens.map(
      (id) => lineage.specimens.find((each) => each.id === id)!.values[0]!.whole!.mm,
    );
    const mean = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
    expect(Math.abs(vivax.mmPerUnit! * 100 - mean) / mean).toBeLessThan(0.02);
  });

  test('give a skull that relatives laid into the frame the scale of its own bones', () => {
    const faceless = drawing('calathorhina-mira');
    // relatives of its size have faces of 150 to 260 mm
    expect(faceless.mmPerUnit! * 100).toBeGreaterThan(120);
    expect(faceless.mmPerUnit! * 100).toBeLessThan(300);
  });

  test('are not made for an animal without digitised points', () => {
    expect(lineage.drawings.some(({ taxon }) => taxon === 'ossorhina-obscura')).toBe(false);
  });
});
