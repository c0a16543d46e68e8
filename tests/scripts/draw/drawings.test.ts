import { resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { fitTemplate, type DrawingTemplate } from '../../../analysis/geometry/index.ts';
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

  test('restore nothing behind a break', () => {
    const { points, breaks, limits } = drawing('limnorhina-fracta');
    const edge = breaks.flatMap(({ points: line }) => line).sort((one, other) => one[1] - other[1]);
    const restored = Object.keys(points).filter((id) => points[id]!.basis === 'relatives');
    expect(restored).toContain('prosthion');
    for (const id of restored)
      for (const [x, y] of [points[id]!.at, ...limits!.map((end) => end.points[id]!)]) {
        const above = edge.findLast((point) => point[1] <= y) ?? edge[0]!;
        const below = edge.find((point) => point[1] > y) ?? edge.at(-1)!;
        expect(x, id).toBeLessThan(Math.max(above[0], below[0]));
        const share = above === below ? 0 : (y - above[1]) / (below[1] - above[1]);
        expect(x, id).toBeLessThan(above[0] + (below[0] - above[0]) * share);
      }
  });

  test('give a broken skull the lost length with which it reads what relatives expect', () => {
    const { points, limits } = drawing('limnorhina-fracta');
    const { conditional, limits: bound } = lineage.traits[0]!.values.find(
      ({ taxon }) => taxon === 'limnorhina-fracta',
    )!;
    const own = points['naris-posterior']!.at[0];
    const reads = (tip: number) => (100 * (own - tip)) / (100 - tip);
    expect(reads(points['prosthion']!.at[0])).toBeCloseTo(conditional!.median, 8);
    const [low, high] = limits!;
    // The lowest restoration adds next to nothing; the highest goes as far as the bracket does.
    expect(low!.value).toBeGreaterThanOrEqual(bound!.atLeast!);
    expect(low!.value - own).toBeLessThan(1);
    expect(high!.value).toBeCloseTo(conditional!.interval[1]!, 8);
    for (const end of limits!) expect(reads(end.points['prosthion']![0])).toBeCloseTo(end.value, 8);
  });

  test('stand with the reading at the estimate where relatives alone give it, and at its ends', () => {
    const { points, limits } = drawing('calathorhina-mira');
    const value = lineage.traits[0]!.values.find(({ taxon }) => taxon === 'calathorhina-mira')!;
    expect(points['naris-posterior']!.at[0]).toBeCloseTo(value.estimate!, 9);
    expect(limits!.map((end) => end.value)).toEqual(value.interval);
    for (const end of limits!) {
      expect(end.points['naris-posterior']![0]).toBeCloseTo(end.value, 9);
      expect(end.points['prosthion']![0]).toBeCloseTo(0, 9);
      expect(end.points['anterior-orbital-rim']![0]).toBeCloseTo(100, 9);
    }
  });

  test('fold at neither end of an interval', () => {
    const [template] = lineage.templates!;
    for (const { points, limits = [] } of lineage.drawings)
      for (const end of limits) {
        const landmarks = Object.entries(points).map(([id, { at }]) => [id, end.points[id] ?? at] as const);
        expect(fitTemplate(template as DrawingTemplate, new Map(landmarks))).toHaveProperty('warp');
      }
  });

  test('have ends only where a value is open', () => {
    const open = lineage.drawings.filter(({ limits }) => limits).map(({ taxon }) => taxon);
    expect(open.sort()).toEqual(['calathorhina-mira', 'limnorhina-fracta']);
  });

  test('are not made for an animal without digitised points', () => {
    expect(lineage.drawings.some(({ taxon }) => taxon === 'ossorhina-obscura')).toBe(false);
  });
});

describe('shapes along the tree', () => {
  test('stand at every fork and animal, the measured line at zero, value and hundred', () => {
    const { landmarks, nodes } = lineage.shapes!;
    const [trait] = lineage.traits;
    const tree = lineage.trees.find(({ reference }) => reference)!;
    expect(nodes.map(({ node }) => node)).toEqual(tree.nodes.map(({ id }) => id));
    const x = (at: readonly number[], id: string) => at[2 * landmarks.indexOf(id)]!;
    for (const { node, at } of nodes) {
      const value = trait!.values.find(({ taxon }) => taxon === node);
      const wanted =
        trait!.nodes.find((fork) => fork.node === node)?.median ??
        value?.estimate ??
        value?.conditional?.median;
      expect(x(at, 'naris-posterior'), node).toBeCloseTo(wanted!, 9);
      expect(x(at, 'prosthion'), node).toBeCloseTo(0, 9);
      expect(x(at, 'anterior-orbital-rim'), node).toBeCloseTo(100, 9);
    }
  });

  test('do not fold anywhere on the tree', () => {
    const { landmarks, nodes, template: id } = lineage.shapes!;
    const template = lineage.templates!.find((each) => each.id === id) as DrawingTemplate;
    for (const { at } of nodes) {
      const shape = new Map(
        landmarks.map((name, index) => [name, [at[2 * index]!, at[2 * index + 1]!] as const]),
      );
      expect(fitTemplate(template, shape)).toHaveProperty('warp');
    }
  });
});
