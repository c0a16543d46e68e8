import { describe, expect, test } from 'vitest';
import {
  certainChanges,
  irreversibleCost,
  orderedCost,
  unorderedCost,
  type Character,
} from '../../../analysis/characters/index.ts';
import { parseNewick, rootOf, type Tree } from '../../../analysis/tree/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { randomTree } from '../../reference/random-tree.ts';
import known from '../../reference/values/parsimony.json' with { type: 'json' };

const binary = { states: ['no', 'yes'], cost: unorderedCost };

function scored(states: Readonly<Record<string, string | readonly string[]>>): Character {
  return new Map(Object.entries(states).map(([taxon, own]) => [taxon, [own].flat()]));
}

/** Tips under a node, which name it whatever its number is. */
function under(tree: Tree, node: number): string {
  const tips = tree.label.flatMap((name, tip) => {
    if (!name) return [];
    for (let at: number = tip; at >= 0; at = tree.parent[at]!) if (at === node) return [name];
    return [];
  });
  return tips.sort().join('');
}

describe('certain changes', () => {
  test('one change at the fork of those that share a state', () => {
    const tree = parseNewick('((a,b),(c,(d,e)));');
    const { steps, changes } = certainChanges(
      tree,
      scored({ a: 'no', b: 'no', c: 'no', d: 'yes', e: 'yes' }),
      binary,
    );
    expect(steps).toBe(1);
    expect(changes.map(({ node, from, to }) => [under(tree, node), from, to])).toEqual([
      ['de', ['no'], ['yes']],
    ]);
  });

  test('none where a gain and a loss are as short as two gains', () => {
    const tree = parseNewick('(o,((a,b),((c,d),(e,f))));');
    const character = scored({ o: 'no', a: 'yes', b: 'yes', c: 'no', d: 'no', e: 'yes', f: 'yes' });
    expect(certainChanges(tree, character, binary)).toEqual({ steps: 2, changes: [] });
  });

  test('an animal that is not scored, or may have either state, adds no change', () => {
    const tree = parseNewick('((a,b),(c,d));');
    const sure = scored({ a: 'no', b: 'no', c: 'yes', d: ['no', 'yes'] });
    expect(certainChanges(tree, sure, binary).steps).toBe(1);
    expect(certainChanges(tree, scored({ a: 'no' }), binary)).toEqual({ steps: 0, changes: [] });
  });

  test('a state that is not listed is refused by name', () => {
    expect(() => certainChanges(parseNewick('(a,b);'), scored({ a: 'maybe', b: 'no' }), binary)).toThrow(
      /"maybe"/,
    );
  });

  // All shortest histories of an invented character, listed by brute force in statistics code outside the project.
  test.each([
    ['unordered', unorderedCost],
    ['ordered', orderedCost],
    ['irreversible', irreversibleCost],
  ] as const)('are the branches that change in every listed shortest history, %s', (rule, cost) => {
    const { tree: newick, tips } = known.mpr;
    const { minCost, allMPRs } = known.mpr[rule];
    const tree = parseNewick(`${newick};`);
    const { steps, changes } = certainChanges(tree, scored(tips), { states: ['0', '1', '2'], cost });
    expect(steps).toBe(minCost);
    const stateIn = (history: Readonly<Record<string, string>>, node: number): string => {
      const label = tree.label[node]!;
      if (label) return (tips as Record<string, string>)[label]!;
      const fork = Object.keys(history).find(
        (name) =>
          name
            .replace(/[^A-Z]/g, '')
            .split('')
            .sort()
            .join('') === under(tree, node),
      );
      return history[fork!]!;
    };
    const always = Array.from({ length: rootOf(tree) }, (_, node) => node).filter((node) =>
      allMPRs.every((history) => stateIn(history, node) !== stateIn(history, tree.parent[node]!)),
    );
    expect(always).toHaveLength(allMPRs.length === 1 ? 4 : 0);
    expect(changes.map(({ node }) => node)).toEqual(always);
    for (const { node, from, to } of changes) {
      const pairs = allMPRs.map((history) => [stateIn(history, tree.parent[node]!), stateIn(history, node)]);
      expect(from).toEqual([...new Set(pairs.map(([above]) => above))].sort());
      expect(to).toEqual([...new Set(pairs.map(([, below]) => below))].sort());
    }
  });

  test('are those of all histories tried one by one, on random trees', () => {
    const random = seededRandom('certain changes');
    const states = ['0', '1', '2'];
    for (let round = 0; round < 60; round++) {
      const tree = randomTree(6, random, { polytomies: true });
      const tips = tree.label.flatMap((name) =>
        name ? [[name, states[Math.floor(random() * 3)]!] as const] : [],
      );
      const cost = [unorderedCost, orderedCost][round % 2]!;
      const tried = allHistories(tree, new Map(tips), states.length);
      const costs = tried.map((history) =>
        history.reduce(
          (sum, state, node) => sum + (node === rootOf(tree) ? 0 : cost(history[tree.parent[node]!]!, state)),
          0,
        ),
      );
      const least = Math.min(...costs);
      const shortest = tried.filter((_, index) => costs[index] === least);
      const always = Array.from({ length: rootOf(tree) }, (_, node) => node).filter((node) =>
        shortest.every((history) => history[node] !== history[tree.parent[node]!]),
      );
      const found = certainChanges(tree, scored(Object.fromEntries(tips)), { states, cost });
      expect(found.steps).toBe(least);
      expect(found.changes.map(({ node }) => node)).toEqual(always);
    }
  });
});

/** Every choice of states at the forks, with those of the tips, as numbers by node. */
function allHistories(tree: Tree, tips: ReadonlyMap<string, string>, states: number): number[][] {
  return tree.label.reduce<number[][]>(
    (begun, name) => {
      const own = name ? [Number(tips.get(name))] : Array.from({ length: states }, (_, state) => state);
      return begun.flatMap((history) => own.map((state) => [...history, state]));
    },
    [[]],
  );
}
