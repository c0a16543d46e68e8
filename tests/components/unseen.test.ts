import { describe, expect, test } from 'vitest';
import { branchMarks, drawnBranches } from '../../components/figures/scene/branches.ts';
import { ghostDashes } from '../../components/figures/scene/ghost-dashes.ts';
import { wide } from '../../components/figures/scene/layout.ts';
import { plateData } from '../../components/figures/scene/plate-data.ts';
import { plateScales } from '../../components/figures/scene/scales.ts';
import { statusMarks } from '../../components/figures/scene/status-marks.ts';
import { inventedLineage } from './fixtures/invented-lineage.ts';
import { risingTips } from './fixtures/hands.ts';

/** A line that rises straight for 100 pixels. */
const straight = { start: [50, 200], foot: [50, 180], head: [50, 120], end: [50, 100] } as const;
const lengthsOf = (dashes: string) => dashes.split(' ').map(Number);

describe('a branch that must have lived unfound', () => {
  test('is whole up to its ghost range, dashed along it, and whole after it', () => {
    const lengths = lengthsOf(ghostDashes(straight, 170, 120)!);
    expect(lengths.length % 2).toBe(0);
    expect(lengths[0]).toBeGreaterThanOrEqual(28);
    expect(lengths[0]).toBeLessThanOrEqual(33);
    expect(lengths.at(-2)).toBeGreaterThan(15);
    const along = lengths.slice(1, -2).reduce((sum, each) => sum + each, 0);
    expect(along).toBeGreaterThan(44);
    expect(along).toBeLessThan(62);
  });

  test('is dashed from its fork where its relatives are older than it', () => {
    expect(lengthsOf(ghostDashes(straight, 400, 150)!)[0]).toBeLessThan(4);
  });

  test('is whole where the range is too short to show', () => {
    expect(ghostDashes(straight, 130, 124)).toBeUndefined();
  });

  test('is told by the compiled ghost range of its own node', () => {
    const lineage = inventedLineage(risingTips);
    const node = lineage.trees[0]!.nodes.find(({ taxon }) => taxon === 'trunk')!;
    const parent = lineage.trees[0]!.nodes.find(({ id }) => id === node.parent)!;
    const ghosted = { ...lineage, ghosts: [{ node: node.id, fromMa: parent.ageMa, toMa: node.ageMa }] };
    const data = plateData(ghosted, ghosted.traits[0]!, 'en');
    const scales = plateScales(data, wide);
    const marks = branchMarks(
      drawnBranches(data.branches, statusMarks(data, wide, scales), scales, wide.markScale),
    );
    const dashed = marks.filter(({ shape }) => shape.kind === 'path' && shape.dashes);
    expect(dashed.map(({ datum }) => datum)).toEqual(['trunk']);
  });
});

describe('the span over other trees', () => {
  const partsOf = (span: [number | null, number | null] | undefined) => {
    const lineage = inventedLineage(risingTips);
    const data = plateData(lineage, lineage.traits[0]!, 'en');
    const taxon = { ...data.taxa.find(({ status }) => status === 'inferred')!, ...(span && { span }) };
    const scales = plateScales(data, wide);
    const [placed] = statusMarks({ ...data, taxa: [taxon] }, wide, scales);
    return { taxon, scales, ends: placed!.marks.filter(({ role }) => role === 'span-end') };
  };

  test('reaches as faint ends beyond the brackets, to the place of its own values', () => {
    const plain = partsOf(undefined);
    expect(plain.ends).toEqual([]);
    const [low, high] = [plain.taxon.interval[0]! - 6, plain.taxon.interval[1]! + 9];
    const { ends, scales } = partsOf([low, high]);
    const d = ends[0]!.shape.kind === 'path' ? ends[0]!.shape.d : '';
    const places = [...d.matchAll(/H([\d.]+)/g)].map(([, x]) => Number(x));
    expect(places[0]).toBeCloseTo(scales.x(low), 0);
    expect(places[1]).toBeCloseTo(scales.x(high), 0);
  });

  test('draws no end where the brackets reach as far themselves', () => {
    const { interval } = partsOf(undefined).taxon;
    expect(partsOf([interval[0], interval[1]]).ends).toEqual([]);
  });
});
