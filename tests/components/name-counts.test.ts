import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../analysis/random/index.ts';
import { drawnBranches } from '../../components/figures/scene/branches.ts';
import { overlap, type Box } from '../../components/figures/scene/label-slots.ts';
import { nameLabels } from '../../components/figures/scene/labels.ts';
import { phone, tall, wide, type PlateLayout } from '../../components/figures/scene/layout.ts';
import { plateData } from '../../components/figures/scene/plate-data.ts';
import { plateScales } from '../../components/figures/scene/scales.ts';
import type { Mark } from '../../components/figures/scene/scene.ts';
import { cutBoxes, sliceMarks } from '../../components/figures/scene/slice.ts';
import { statusMarks } from '../../components/figures/scene/status-marks.ts';
import { inventedLineage, type InventedTip } from './fixtures/invented-lineage.ts';

/** Animals that rise along a tree with a scatter, every third worked out from relatives. */
function rising(count: number): InventedTip[] {
  return Array.from({ length: count }, (_, index) => {
    const share = index / count;
    const value = 10 + share * 80 + ((index * 53) % 13);
    const from = index % 10 === 0 ? 0 : Math.max(3, 52 - share * 44 - ((index * 37) % 7));
    const inferred: [number, number, number] = [value - 11, value, value + 12];
    return {
      id: `tip-${index}`,
      name: `Numerosa ${'abcdefghij'.slice(index % 5, (index % 5) + 5)}a`,
      from,
      to: Math.max(0, from - 2),
      ...(index % 3 === 2 ? { inferred } : { value }),
    };
  });
}

/** Animals anywhere on the plate. */
function cloud(count: number, seed = 'a cloud of names'): InventedTip[] {
  const random = seededRandom(seed, count);
  return Array.from({ length: count }, (_, index) => {
    const from = 2 + random() * 50;
    return {
      id: `tip-${index}`,
      name: `Numerosa ${'klmnopqrst'.slice(index % 5, (index % 5) + 5)}a`,
      from,
      to: from - 1,
      value: 2 + random() * 100,
    };
  });
}

/** Names that a plate shows; a cloud of hundreds has smaller marks, as `composePlate` gives them. */
function namesOn(
  given: PlateLayout,
  tips: readonly InventedTip[],
  hasTree = true,
  slices: readonly number[] = [],
): Mark[] {
  const layout = tips.length > 60 ? { ...given, markScale: given.markScale * 0.65 } : given;
  const lineage = inventedLineage(tips);
  const data = plateData(hasTree ? lineage : { ...lineage, trees: [] }, lineage.traits[0]!, 'en');
  const scales = plateScales(data, layout);
  const placed = statusMarks(data, layout, scales);
  const drawn = drawnBranches(data.branches, placed, scales, layout.markScale);
  const cuts = slices.flatMap((age) => sliceMarks(data, drawn, layout, scales, age, ''));
  return nameLabels(placed, drawn, layout, cutBoxes(cuts)).filter(
    ({ layer, role }) => layer === 'labels' && role === 'taxon-name',
  );
}

function boxOf({ shape }: Mark): Box {
  if (shape.kind !== 'text') throw new Error('a name is a text');
  const width = shape.runs[0]!.text.length * shape.size * 0.44;
  const left = { start: shape.x, end: shape.x - width, middle: shape.x - width / 2 }[shape.anchor];
  return {
    left,
    right: left + width,
    top: shape.y - shape.size * 0.72,
    bottom: shape.y + shape.size * 0.24,
  };
}

describe('names beside the marks', () => {
  test.each([
    ['all of 24 animals on the wide plate', wide, rising(24), true, 24],
    ['60% of 40 animals on the wide plate', wide, rising(40), true, 24],
    ['12 of 200 animals on a phone', phone, rising(200), true, 12],
    ['12 of a cloud of 200 on a phone', phone, cloud(200), false, 12],
    ['12 of another cloud of 200 on a phone', phone, cloud(200, 'another cloud'), false, 12],
    ['12 of a third cloud of 200 on a phone', phone, cloud(200, 'a third cloud'), false, 12],
    ['12 of a cloud of 200 on the wide plate', wide, cloud(200), false, 12],
    ['half of 24 animals on a phone', phone, rising(24), true, 12],
    ['all of 24 animals on the tall plate', tall, rising(24), true, 24],
  ] as const)('%s are shown, and none covers another', (_, layout, tips, hasTree, least) => {
    const names = namesOn(layout, tips, hasTree);
    expect(names.length).toBeGreaterThanOrEqual(least);
    const boxes = names.map(boxOf);
    boxes.forEach((box, index) =>
      boxes.slice(index + 1).forEach((other) => expect(overlap(box, other)).toBe(false)),
    );
  });
  test.each([10, 20, 30, 40, 50])(
    'a slice at %d Ma takes the place of none of 24 on the wide plate',
    (age) => {
      expect(namesOn(wide, rising(24), true, [age])).toHaveLength(24);
    },
  );
});
