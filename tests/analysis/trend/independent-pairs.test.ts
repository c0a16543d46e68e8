import { expect, test } from 'vitest';
import { independentPairs } from '../../../analysis/trend/index.ts';
import { dateAsGiven, parseNewick, tipsOf } from '../../../analysis/tree/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { randomTree } from '../../reference/random-tree.ts';

const tree = dateAsGiven(parseNewick('((a:3,b:5):4,(c:2,(d:1,e:6):2):1);'), 9);

test('nearest relatives are paired first, and the odd one of a fork waits for the next', () => {
  expect(independentPairs(tree, new Set(['a', 'b', 'c', 'd', 'e']))).toEqual([
    { one: 'a', other: 'b', pathMyr: 8 },
    { one: 'd', other: 'e', pathMyr: 7 },
  ]);
  expect(independentPairs(tree, new Set(['a', 'c', 'e']))).toEqual([{ one: 'c', other: 'e', pathMyr: 10 }]);
});

test('tips that the tree lacks are passed over, and one tip has no pair', () => {
  expect(independentPairs(tree, new Set(['a', 'elsewhere']))).toEqual([]);
  expect(independentPairs(tree, new Set())).toEqual([]);
});

test('no branch lies on the paths of two pairs, and all but one tip at most are paired', () => {
  for (let seed = 0; seed < 20; seed++) {
    const random = randomTree(15, seededRandom('pairs', seed));
    const labels = new Set(tipsOf(random).map((tip) => random.label[tip]!));
    const pairs = independentPairs(random, labels);
    expect(pairs).toHaveLength(Math.floor(labels.size / 2));
    const branches = pairs.flatMap(({ one, other }) => pathBetween(random, one, other));
    expect(new Set(branches).size).toBe(branches.length);
  }
});

/** Nodes whose branches lie between two tips. */
function pathBetween(of: typeof tree, one: string, other: string): number[] {
  const up = (label: string) => {
    const line: number[] = [];
    for (let node = of.label.indexOf(label); node !== -1; node = of.parent[node]!) line.push(node);
    return line;
  };
  const [first, second] = [up(one), up(other)];
  return [
    ...first.filter((node) => !second.includes(node)),
    ...second.filter((node) => !first.includes(node)),
  ];
}
