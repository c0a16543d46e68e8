import { describe, expect, test } from 'vitest';
import { shapesAlong, shapesAtNodes, type PlanePoint, type Shape } from '../../../analysis/geometry/index.ts';
import { branchesAt } from '../../../analysis/estimate/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { rootOf, tipsOf, type DatedTree } from '../../../analysis/tree/index.ts';
import { acrossAt, ageAtHeight, heightOfAge } from '../../../components/slice/chart-places.ts';
import { ageIn, searchWithAge } from '../../../components/slice/address.ts';
import { everyPoint, linePoints } from '../../../components/slice/line-points.ts';
import {
  ageAtNextFork,
  allowedAge,
  cutBranches,
  findShape,
  numbersBetween,
  oldestAge,
  shareAt,
} from '../../../components/slice/slice-at.ts';
import type { SliceBranch } from '../../../components/slice/slice-block.ts';
import { randomTree } from '../../reference/random-tree.ts';

/** Branches of a dated tree as a block holds them. */
function branchesOfTree(tree: DatedTree): SliceBranch[] {
  return Array.from({ length: rootOf(tree) }, (_, node) => ({
    id: String(node),
    from: { ageMa: tree.ageMa[tree.parent[node]!]! },
    toMa: tree.ageMa[node]!,
    lastMa: tree.ageMa[node]!,
    ends: [tree.parent[node]!, node] as const,
    name: [],
  }));
}

const landmarks = ['snout', 'naris', 'eye'];

function scattered(tree: DatedTree, random: () => number): Map<string, Shape> {
  return new Map(
    tipsOf(tree).map((tip) => [
      tree.label[tip]!,
      new Map(landmarks.map((id): [string, PlanePoint] => [id, [100 * random(), 50 * random()]])),
    ]),
  );
}

describe('the shape of a cut branch', () => {
  test('is what the engine estimates at that point of the branch, to 1e-9', () => {
    for (let seed = 0; seed < 10; seed++) {
      const random = seededRandom('slice', seed);
      const tree = randomTree(12, random, { polytomies: seed % 2 === 1 });
      const shapes = scattered(tree, random);
      const flat = (shape: Shape) => landmarks.flatMap((id) => [...shape.get(id)!]);
      const nodes = shapesAtNodes(tree, shapes).map(flat);
      const branches = branchesOfTree(tree);
      const ageMa = tree.ageMa[rootOf(tree)]! * (0.2 + 0.6 * random());
      const cut = cutBranches({ branches, values: nodes.map(([x]) => x!) }, ageMa);
      expect(cut.map(({ branch }) => Number(branch.id)).sort((a, b) => a - b)).toEqual(
        branchesAt(tree, ageMa),
      );
      const engine = shapesAlong(
        tree,
        shapes,
        cut.map(({ branch }) => ({ node: Number(branch.id), ageMa })),
      );
      cut.forEach(({ branch, share }, index) => {
        const between = numbersBetween(nodes[branch.ends[0]]!, nodes[branch.ends[1]]!, share);
        flat(engine[index]!).forEach((wanted, place) =>
          expect(Math.abs(between[place]! - wanted)).toBeLessThan(1e-9),
        );
      });
    }
  });

  test('is that of the fork where the branch begins and that of its end where it ends, and stays there', () => {
    const branch = { from: { ageMa: 30 }, toMa: 20 };
    expect([35, 30, 25, 20, 4].map((age) => shareAt(branch, age))).toEqual([0, 0, 0.5, 1, 1]);
    expect(shareAt({ from: { ageMa: 30 }, toMa: 30 }, 30)).toBe(1);
  });

  test('is missing where the template folds at one of its ends', () => {
    const cut = { branch: { ends: [0, 1] } as unknown as SliceBranch, share: 0.5 };
    expect(findShape({ outlines: [[0, 0], null] }, cut)).toBeUndefined();
    const [from, to] = [
      [0, 4],
      [10, 8],
    ];
    expect(findShape({ outlines: [from, to] }, cut)).toEqual({ from, to, share: 0.5 });
  });
});

describe('a line at an age', () => {
  const branch = (
    id: string,
    fromMa: number,
    toMa: number,
    ends: [number, number],
    bone?: [number, number],
  ) => ({
    id,
    from: { ageMa: fromMa },
    toMa,
    lastMa: bone?.[1] ?? toMa,
    ends,
    name: [],
    ...(bone && { animal: { taxon: id, firstMa: bone[0], lastMa: bone[1], name: [], note: '' } }),
  });
  const branches: SliceBranch[] = [
    branch('stem', 50, 30, [0, 1]),
    branch('a', 30, 12, [1, 2], [14, 10]),
    branch('b', 30, 0, [1, 3], [2, 0]),
    branch('c', 50, 40, [0, 4], [41, 39]),
  ];
  const values = [20, 30, 60, 10, 5];

  test('cuts one branch before a fork and two after it, in the order of their values', () => {
    const cutAt = (age: number) => cutBranches({ branches, values }, age).map((cut) => cut.branch.id);
    expect(cutAt(45)).toEqual(['c', 'stem']);
    expect(cutAt(30)).toEqual(['stem']);
    expect(cutAt(29.9)).toEqual(['b', 'a']);
    expect(cutAt(9.9)).toEqual(['b']);
    expect(cutAt(50)).toEqual([]);
  });

  test('counts bones from the first to the last find of an animal, both included', () => {
    const bones = (age: number) =>
      cutBranches({ branches, values }, age).flatMap((cut) => (cut.hasBone ? cut.branch.id : []));
    expect([14.1, 14, 10, 2, 0].map(bones)).toEqual([[], ['a'], ['a'], ['b'], ['b']]);
  });

  test('goes back to where branches of a fork are still one, and forward to where they have just parted', () => {
    expect(ageAtNextFork(branches, 12, 'older')).toBe(30);
    expect(ageAtNextFork(branches, 30, 'older')).toBe(49.9);
    expect(ageAtNextFork(branches, 49.9, 'older')).toBe(49.9);
    expect(ageAtNextFork(branches, 45, 'younger')).toBe(29.9);
    expect(ageAtNextFork(branches, 29.9, 'younger')).toBe(0);
  });

  test('stands on tenths of a million years between the oldest fork and today', () => {
    expect(oldestAge(branches)).toBe(49.9);
    expect([61, 33.333, -4].map((age) => allowedAge(branches, age))).toEqual([49.9, 33.3, 0]);
    expect(allowedAge(branches, Infinity)).toBe(49.9);
  });
});

describe('the chart of a slice', () => {
  const axis = { top: 20, bottom: 420, oldestMa: 50 };

  test('places an age at a height, and reads it back', () => {
    expect(heightOfAge(axis, 0)).toBe(20);
    expect(heightOfAge(axis, 25)).toBe(220);
    for (const age of [0, 7.3, 50]) expect(ageAtHeight(axis, heightOfAge(axis, age))).toBeCloseTo(age, 12);
  });

  test('finds a branch across it, between two of its points and beyond its ends', () => {
    const line = [10, 100, 20, 80, 20, 40];
    expect([100, 90, 80, 60, 10, 130].map((y) => acrossAt(line, y))).toEqual([10, 15, 20, 20, 20, 10]);
  });
});

describe('the address of a slice', () => {
  test('keeps the age and everything else', () => {
    expect(searchWithAge('?without=a&cut=3', 12.5)).toBe('?without=a&cut=12.5');
    expect(ageIn('?without=a&cut=12.5')).toBe(12.5);
  });

  test('is passed over where it holds no age', () => {
    for (const search of ['', '?cut=', '?cut=old', '?cut=-3', '?cut=Infinity'])
      expect(ageIn(search)).toBeUndefined();
  });
});

test('the points of a line are whole numbers, from its first to its last', () => {
  const from = [0, 0, 10.4, 0, 10, -9.6, 3, 3];
  const still = { from, to: from, share: 0.3 };
  expect(linePoints(still, everyPoint({ first: 0, last: 2 })).trim()).toBe('0 0 10 0 10 -10');
  expect(linePoints(still, everyPoint({ first: 2, last: 3 })).trim()).toBe('10 -10 3 3');
  expect(linePoints({ from: [0, 0], to: [10, -20], share: 0.25 }, [0]).trim()).toBe('3 -5');
});
