import { describe, expect, test } from 'vitest';
import { composeSmall } from '../../../components/figures/small-plate/compose-small.ts';
import { cardSize, smallLayout, wideCardSize } from '../../../components/figures/small-plate/small-layout.ts';
import { plateData } from '../../../components/figures/scene/plate-data.ts';
import { plateScales } from '../../../components/figures/scene/scales.ts';
import { inventedLineage, type InventedTip } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';

function dataOf(tips: readonly InventedTip[]) {
  const lineage = inventedLineage(tips);
  return plateData(lineage, lineage.traits[0]!, 'en');
}

describe.each([cardSize, wideCardSize])('a small plate of $width by $height', (size) => {
  const data = dataOf(risingTips);
  const scene = composeSmall(data, size)!;

  test('has the size of its card', () => {
    expect([scene.width, scene.height]).toEqual([size.width, size.height]);
  });

  test('marks every animal and names none', () => {
    const marked = new Set(scene.marks.filter(({ layer }) => layer === 'marks').map(({ datum }) => datum));
    expect([...marked].sort()).toEqual(risingTips.map(({ id }) => id).sort());
    expect(scene.marks.filter(({ role }) => role === 'taxon-name')).toEqual([]);
  });

  test('has a line of descent for every branch of the lineage', () => {
    const lines = scene.marks.filter(({ role }) => role.startsWith('branch') && role !== 'branch-halo');
    expect(lines.map(({ datum }) => datum).sort()).toEqual(data.branches.map(({ id }) => id).sort());
  });

  test('keeps every disc inside', () => {
    for (const { shape } of scene.marks)
      if (shape.kind === 'circle') {
        expect(shape.x - shape.radius).toBeGreaterThan(0);
        expect(shape.x + shape.radius).toBeLessThan(size.width);
        expect(shape.y - shape.radius).toBeGreaterThan(0);
        expect(shape.y + shape.radius).toBeLessThan(size.height);
      }
  });
});

describe('a small plate', () => {
  test('stands on the scales of its own values: greater is further right, younger is higher', () => {
    const data = dataOf(risingTips);
    const scales = plateScales(data, smallLayout(data, cardSize));
    const disc = (id: string) => {
      const mark = composeSmall(data, cardSize)!.marks.find(
        ({ datum, role }) => datum === id && role === 'disc',
      )!;
      if (mark.shape.kind !== 'circle') throw new Error('a disc is a circle');
      return mark.shape;
    };
    expect(disc('trunk').x).toBeCloseTo(scales.x(108), 9);
    expect(disc('first').x).toBeLessThan(disc('tall').x);
    expect(disc('first').y).toBeGreaterThan(disc('tall').y);
  });

  test('differs between lineages that differ', () => {
    const falling = risingTips.map((tip) =>
      tip.value === undefined ? tip : { ...tip, value: 120 - tip.value },
    );
    expect(composeSmall(dataOf(falling), cardSize)).not.toEqual(composeSmall(dataOf(risingTips), cardSize));
  });

  test('holds a value far past the hundred', () => {
    const data = dataOf([
      ...risingTips.slice(1),
      { id: 'far', name: 'Longa ultra', from: 5, to: 3, value: 260 },
    ]);
    const disc = composeSmall(data, cardSize)!.marks.find(
      ({ datum, role }) => datum === 'far' && role === 'disc',
    )!;
    expect(disc.shape.kind === 'circle' && disc.shape.x).toBeLessThan(cardSize.width);
  });

  test('draws two hundred animals', () => {
    const tips = Array.from({ length: 200 }, (_, index): InventedTip => ({
      id: `tip-${index}`,
      name: `Invena ${index}`,
      from: 50 - index / 5,
      to: 49 - index / 5,
      value: index / 2,
    }));
    const marks = composeSmall(dataOf(tips), cardSize)!.marks;
    expect(marks.filter(({ role }) => role === 'disc')).toHaveLength(200);
  });

  test('is absent when no animal can be placed', () => {
    const lineage = inventedLineage(risingTips);
    lineage.traits[0]!.values = [];
    expect(composeSmall(plateData(lineage, lineage.traits[0]!, 'en'), cardSize)).toBeUndefined();
  });

  test('draws marks alone for a lineage without a tree', () => {
    const lineage = { ...inventedLineage(risingTips), trees: [] };
    const marks = composeSmall(plateData(lineage, lineage.traits[0]!, 'en'), cardSize)!.marks;
    expect(marks.some(({ role }) => role.startsWith('branch'))).toBe(false);
    expect(marks.some(({ role }) => role === 'disc')).toBe(true);
  });
});
