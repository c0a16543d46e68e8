import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  dateAsGiven,
  dateByEqualShare,
  dateByMinimumBranch,
  dateTree,
  findMisplacedTips,
  parseNewick,
  type DatedTree,
} from '../../../analysis/tree/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { randomTree } from '../../reference/random-tree.ts';

const ages = (entries: Record<string, number>) => new Map(Object.entries(entries));
const ageOf = (tree: DatedTree, label: string) => tree.ageMa[tree.label.indexOf(label)];

test('equal share puts forks at equal steps between the root and the oldest tip below', () => {
  const tree = dateByEqualShare(
    parseNewick('(out,(a,(b,(c,d)z)y)x)r;'),
    ages({ out: 0, a: 10, b: 40, c: 0, d: 5 }),
    60,
  );
  expect(ageOf(tree, 'x')).toBeCloseTo(60 - 20 / 3, 12);
  expect(ageOf(tree, 'y')).toBeCloseTo(60 - 40 / 3, 12);
  expect(ageOf(tree, 'z')).toBeCloseTo((60 - 40 / 3 + 5) / 2, 12);
});

test('equal share does not depend on the order in which children are written', () => {
  const tips = ages({ a: 0, b: 0, c: 0, d: 0, e: 12 });
  const one = dateByEqualShare(parseNewick('((a,(b,(c,d)z)y)x,e)r;'), tips, 30);
  const other = dateByEqualShare(parseNewick('(e,(((d,c)z,b)y,a)x)r;'), tips, 30);
  for (const fork of ['x', 'y', 'z']) expect(ageOf(one, fork)).toBe(ageOf(other, fork));
});

test('minimum branch makes every fork as young as its descendants allow', () => {
  const text = '(out,(a,(b,c)y)x)r;';
  const tips = ages({ out: 0, a: 10, b: 40, c: 0 });
  const tree = dateByMinimumBranch(parseNewick(text), tips, { minimumMa: 2 });
  expect([ageOf(tree, 'y'), ageOf(tree, 'x'), ageOf(tree, 'r')]).toEqual([42, 44, 46]);
  expect(ageOf(dateByMinimumBranch(parseNewick(text), tips, { minimumMa: 2, rootAgeMa: 60 }), 'r')).toBe(60);
  expect(() => dateByMinimumBranch(parseNewick(text), tips, { minimumMa: 2, rootAgeMa: 45 })).toThrow(
    'root age must be at least 46 Ma, one minimum branch above the fork of "a" and "b", got 45',
  );
});

test('no rule makes a branch negative or moves a tip', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 40 }), fc.integer(), (count, seed) => {
      const tree = randomTree(count, seededRandom('dating', seed), { polytomies: true });
      const tips = new Map(
        [...tree.label.entries()]
          .filter(([, label]) => label !== '')
          .map(([node, label]) => [label, tree.ageMa[node]!]),
      );
      for (const dated of [
        dateTree(tree, { rule: 'equal-share', rootAgeMa: 45 }, tips),
        dateTree(tree, { rule: 'minimum-branch', minimumMa: 0.5 }, tips),
        dateTree(tree, { rule: 'given' }, tips),
      ]) {
        expect(dated.branchLength.every((length) => length >= 0)).toBe(true);
        expect(dated.branchLength.every((length, node) => node === count || Number.isFinite(length))).toBe(
          true,
        );
      }
      const shared = dateTree(tree, { rule: 'equal-share', rootAgeMa: 45 }, tips);
      for (const [label, age] of tips) expect(ageOf(shared, label)).toBe(age);
    }),
  );
});

test('mistakes in ages and lengths name the tips', () => {
  const tree = parseNewick('((a:1,b:1)x:1,c:2)r;');
  expect(() => dateByEqualShare(tree, ages({ a: 1 }), 9)).toThrow('no age for the tips "b", "c"');
  expect(() => dateByEqualShare(tree, ages({ a: 1, b: -2, c: 0 }), 9)).toThrow(
    'age of "b" must be 0 Ma or more, got -2',
  );
  expect(() => dateByEqualShare(tree, ages({ a: 1, b: 12, c: 0 }), 9)).toThrow(
    'root age must be at least 12 Ma, the age of tip "b", got 9',
  );
  expect(() => dateAsGiven(parseNewick('((a:1,b)x:1,c:2)r;'))).toThrow('tip "b" has no branch length');
  expect(() => dateAsGiven(parseNewick('((a:1,b:-1)x:1,c:2)r;'))).toThrow(
    'tip "b" has a negative branch length, -1',
  );
  expect(() => dateAsGiven(tree, 1)).toThrow(
    'root age must be at least 2 Ma, the way down to tip "c", got 1',
  );
});

test('tips that stand outside their recorded ages are listed with both', () => {
  const tree = dateAsGiven(parseNewick('((a:1,b:2)x:1,c:2)r;'), 10);
  const recorded = new Map([
    ['a', { from: 9, to: 8.5 }],
    ['b', { from: 8, to: 6 }],
  ]);
  expect(findMisplacedTips(tree, recorded)).toEqual([{ label: 'a', treeMa: 8, fromMa: 9, toMa: 8.5 }]);
});
