import { describe, expect, test } from 'vitest';
import { composePlate, type PlateRequest } from '../../components/figures/scene/compose-plate.ts';
import { layouts, wide, withoutSkull } from '../../components/figures/scene/layout.ts';
import { overlap, type Box } from '../../components/figures/scene/label-slots.ts';
import { plateData } from '../../components/figures/scene/plate-data.ts';
import { plateScales } from '../../components/figures/scene/scales.ts';
import type { Mark } from '../../components/figures/scene/scene.ts';
import { inventedLineage, type InventedTip } from './fixtures/invented-lineage.ts';
import { risingTips } from './fixtures/hands.ts';

function request(tips: readonly InventedTip[], slices: number[] = []): Omit<PlateRequest, 'layout'> {
  const lineage = inventedLineage(tips);
  const row = { word: 'word', note: 'note' };
  return {
    data: plateData(lineage, lineage.traits[0]!, 'en'),
    words: {
      ruler: { start: 'start', end: 'end', unit: 'mm' },
      key: { measured: row, bounded: row, inferred: row, unknown: row, bar: row, bed: row },
      breakWord: 'break',
      measure: () => ({ part: 'a', whole: 'b' }),
      value: (taxon) => taxon,
      slice: (age) => `slice ${age}`,
      interval: (from, to) => `interval ${from} ${to}`,
      meaning: ['meaning'],
    },
    anchors: new Map(),
    slices,
  };
}

const rolesOf = (marks: readonly Mark[], taxon: string) =>
  marks.filter((mark) => mark.layer === 'marks' && mark.datum === taxon).map((mark) => mark.role);

describe('the plate', () => {
  const scene = composePlate({ ...request(risingTips, [32]), layout: wide });
  const scales = plateScales(request(risingTips).data, wide);

  test('the present is at the top and older is lower', () => {
    expect(scales.y(0)).toBe(wide.chart.top);
    expect(scales.y(50)).toBeGreaterThan(scales.y(10));
  });

  test('a share of a measured line is drawn to the ruler from zero to hundred', () => {
    expect(scales.x(0)).toBe(wide.axis.zero);
    expect(scales.x(100)).toBe(wide.axis.hundred);
  });

  test('each status has a shape of its own', () => {
    expect(rolesOf(scene.marks, 'first')).toContain('disc');
    expect(rolesOf(scene.marks, 'broken')).toEqual(expect.arrayContaining(['half', 'limit-wall', 'arrow']));
    expect(rolesOf(scene.marks, 'faceless')).toEqual(expect.arrayContaining(['diamond', 'ruled', 'bracket']));
    expect(rolesOf(scene.marks, 'faceless')).not.toContain('disc');
  });

  test('an unknown value has a ring and no place on the trait axis', () => {
    const tips = [...risingTips, { id: 'nothing', name: 'Ixa obscura', from: 40, to: 38 }];
    const marks = composePlate({ ...request(tips), layout: wide }).marks;
    expect(rolesOf(marks, 'nothing')).toEqual(['unknown-span', 'ring', 'query']);
    const ring = marks.find((mark) => mark.datum === 'nothing' && mark.role === 'ring')!.shape;
    expect(ring.kind === 'circle' && ring.x).toBeGreaterThan(scales.x(108));
  });

  test('forks carry no mark', () => {
    const forks = scene.marks.filter((mark) => mark.datum?.startsWith('fork-'));
    expect(forks.length).toBeGreaterThan(0);
    expect(new Set(forks.map((mark) => mark.layer))).toEqual(new Set(['branches']));
  });

  test('an at-least arrow points to larger values and an at-most arrow to smaller ones', () => {
    const lineage = inventedLineage(risingTips);
    const value = lineage.traits[0]!.values.find((each) => each.taxon === 'broken')!;
    const arrowEnd = (limits: typeof value.limits) => {
      value.limits = limits;
      const data = plateData(lineage, lineage.traits[0]!, 'en');
      const marks = composePlate({ ...request(risingTips), data, layout: wide }).marks;
      const arrow = marks.find((mark) => mark.datum === 'broken' && mark.role === 'arrow')!.shape;
      const [, from, to] = /M([\d.]+) [\d.]+H([\d.]+)/.exec(arrow.kind === 'path' ? arrow.d : '')!;
      return Number(to) - Number(from);
    };
    expect(arrowEnd({ atLeast: 31, specimen: 'x' })).toBeGreaterThan(0);
    expect(arrowEnd({ atMost: 31, specimen: 'x' })).toBeLessThan(0);
  });

  test('a slice marks every branch that it cuts, and says where bone of that age is known', () => {
    const cuts = scene.marks.filter((mark) => mark.datum === 'slice-32' && mark.role.startsWith('cut '));
    const alive = request(risingTips).data.branches.filter(
      (branch) => branch.from.ageMa > 32 && branch.lastMa <= 32,
    );
    expect(cuts).toHaveLength(alive.length);
    expect(cuts.filter((mark) => mark.role === 'cut cut-bone')).toHaveLength(2);
  });

  test('no coordinate is missing in any format', () => {
    for (const layout of layouts) {
      const text = JSON.stringify(composePlate({ ...request(risingTips, [10]), layout }));
      expect(text).not.toMatch(/NaN|null|undefined/);
    }
  });
});

describe('a plate without a skull', () => {
  test('moves ruler and chart up into the room of the skull', () => {
    for (const layout of layouts) {
      const low = withoutSkull(layout);
      expect(low.chart.top).toBeLessThan(layout.chart.top);
      expect(low.chart.bottom).toBe(layout.chart.bottom);
      expect(low.chart.top - low.rulerTop).toBe(layout.chart.top - layout.rulerTop);
    }
  });
});

describe('names on the plate', () => {
  const boxOf = (mark: Mark): Box => {
    if (mark.shape.kind !== 'text') throw new Error('a name is a text');
    const { x, y, size, anchor, runs } = mark.shape;
    const width = runs[0]!.text.length * size * 0.44;
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    return { left, right: left + width, top: y - size * 0.72, bottom: y + size * 0.24 };
  };

  test.each(layouts.map((layout) => [layout.name, layout] as const))(
    'never overlap on the %s plate',
    (_, layout) => {
      const names = composePlate({ ...request(risingTips), layout }).marks.filter(
        (mark) => mark.role === 'taxon-name' && mark.layer === 'labels',
      );
      expect(names.length).toBeGreaterThan(5);
      const boxes = names.map(boxOf);
      boxes.forEach((box, index) =>
        boxes.slice(index + 1).forEach((other) => expect(overlap(box, other)).toBe(false)),
      );
    },
  );

  test('all stand on the wide plate when there is room', () => {
    const names = composePlate({ ...request(risingTips), layout: wide }).marks.filter(
      (mark) => mark.role === 'taxon-name' && mark.layer === 'labels',
    );
    expect(names).toHaveLength(risingTips.length);
  });
});

describe('lines of descent', () => {
  test('pass clear of the marks of other animals', async () => {
    const { drawnBranches, pointsOf } = await import('../../components/figures/scene/branches.ts');
    const { statusMarks } = await import('../../components/figures/scene/status-marks.ts');
    const { data } = request(risingTips);
    const scales = plateScales(data, wide);
    const placed = statusMarks(data, wide, scales);
    for (const { branch, course } of drawnBranches(data.branches, placed, scales, 1)) {
      for (const mark of placed.filter((each) => each.taxon.id !== branch.taxon)) {
        const gaps = pointsOf(course).map(([x, y]) => Math.hypot(x - mark.x, y - mark.y));
        expect(Math.min(...gaps), `${branch.id} at ${mark.taxon.id}`).toBeGreaterThan(5.2);
      }
    }
  });
});
