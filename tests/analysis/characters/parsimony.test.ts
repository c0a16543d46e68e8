import { expect, test } from 'vitest';
import {
  countSteps,
  fitCharacter,
  fitMatrix,
  isInformative,
  maximumSteps,
  minimumSteps,
  type Character,
} from '../../../analysis/characters/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { isTip, parseNewick, tipsOf, type Tree } from '../../../analysis/tree/index.ts';
import { characterOf, charactersOf } from '../../reference/character-rows.ts';
import { everyTree } from '../../reference/every-tree.ts';
import { parsimonyReference } from '../../reference/parsimony.ts';
import { randomTree } from '../../reference/random-tree.ts';

const { listed, textbook, characters, treeCounts, statesAtForks } = parsimonyReference;
const rows = [listed, textbook].flatMap(({ matrix, rows }) => rows.map((row) => ({ matrix, row })));

test.each(rows)('steps and indices of a matrix agree with enumeration on $row.0', ({ matrix, row }) => {
  const [newick, steps, consistency, retention, withoutUninformative] = row;
  const [tree, columns] = [parseNewick(newick), charactersOf(matrix)];
  const fit = fitMatrix(tree, columns);
  expect(fit.characters.map((character) => character.steps)).toEqual(steps);
  expect(fit.characters.map((character) => character.minimum)).toEqual(characters.minimum);
  expect(fit.characters.map((character) => character.maximum)).toEqual(characters.maximum);
  expect(fit.characters.map((character) => character.informative)).toEqual(characters.informative);
  expect(fit.characters.map((character) => character.consistency)).toEqual(steps.map((count) => 1 / count));
  expect(fit.characters.map((character) => character.retention)).toEqual([
    ...steps.slice(0, 5).map((count) => 2 - count),
    null,
  ]);
  expect([fit.counted, fit.steps]).toEqual([6, steps.reduce((sum, count) => sum + count, 0)]);
  expect(fit.consistency).toBeCloseTo(consistency, 14);
  expect(fit.retention).toBeCloseTo(retention, 14);
  const informative = fitMatrix(tree, columns, { informativeOnly: true });
  expect([informative.counted, informative.characters.length]).toEqual([5, 6]);
  expect(informative.consistency).toBeCloseTo(withoutUninformative, 14);
  expect(informative.retention).toBeCloseTo(retention, 14);
});

test.each([
  ['listed', listed],
  ['textbook', textbook],
] as const)('one tree alone has the fewest steps of the %s matrix', (_, { matrix, best, bestSteps }) => {
  const columns = charactersOf(matrix);
  const lengths = everyTree(Object.keys(matrix)).map((tree) => fitMatrix(tree, columns).steps);
  expect(Math.min(...lengths)).toBe(bestSteps);
  expect(lengths.filter((steps) => steps === bestSteps)).toHaveLength(1);
  expect(fitMatrix(parseNewick(best), columns).steps).toBe(bestSteps);
});

test('the search of the tests meets as many trees as there are', () => {
  for (const [tips, count] of Object.entries(treeCounts))
    expect(everyTree([...'ABCDEF'].slice(0, Number(tips)))).toHaveLength(count);
});

test('an unsure state takes whichever costs least and an unscored tip takes any', () => {
  const tree = parseNewick(statesAtForks.tree);
  for (const { states, steps } of [statesAtForks.scored, statesAtForks.oneUnsureOneUnscored])
    expect(countSteps(tree, characterOf(states))).toBe(steps);
});

test('steps are the least over every choice of states at the forks, with forks in three and unsure tips', () => {
  const random = seededRandom('states at forks');
  for (let round = 0; round < 150; round++) {
    const tree = randomTree(3 + Math.floor(random() * 4), random, { polytomies: true });
    const character = randomCharacter(tree, random);
    expect(countSteps(tree, character)).toBe(leastByForks(tree, character));
  }
});

test('fewest and most steps are those of the best tree and of the single fork, by every tree', () => {
  const random = seededRandom('every tree');
  const names = ['t0', 't1', 't2', 't3', 't4', 't5'];
  const [trees, single] = [everyTree(names), parseNewick(`(${names.join(',')});`)];
  for (let round = 0; round < 25; round++) {
    const character = randomCharacter(single, random);
    const lengths = trees.map((tree) => countSteps(tree, character));
    expect(minimumSteps(single, character)).toBe(Math.min(...lengths));
    expect(maximumSteps(single, character)).toBe(countSteps(single, character));
    expect(Math.max(...lengths)).toBeLessThanOrEqual(maximumSteps(single, character));
  }
});

test('the place of the root and the names of the states change no count', () => {
  const renamed = charactersOf(listed.matrix).map(
    (column) => new Map([...column].map(([label, [state]]) => [label, [state === '0' ? 'there' : 'lost']])),
  );
  for (const newick of [
    '((Alpha,Beta),(Gamma,(Delta,Epsilon)));',
    '(Alpha,Beta,(Gamma,(Delta,Epsilon)));',
    '(Delta,(Epsilon,(Gamma,(Beta,Alpha))));',
  ])
    expect(fitMatrix(parseNewick(newick), renamed).steps).toBe(listed.bestSteps);
});

test('a fork in five counts as one fork, which a tree in twos may better', () => {
  const { steps } = fitMatrix(parseNewick('(Alpha,Beta,Gamma,Delta,Epsilon);'), charactersOf(listed.matrix));
  expect(steps).toBe(characters.maximum.reduce((sum, count) => sum + count, 0));
});

test('taxa that are not on the tree do not count', () => {
  const states = { A: '0', B: '0', C: '1', D: '1', elsewhere: '2' };
  expect(fitCharacter(parseNewick('((A,B),(C,D));'), characterOf(states))).toEqual({
    steps: 1,
    minimum: 1,
    maximum: 2,
    informative: true,
    consistency: 1,
    retention: 1,
  });
});

test.each([
  ['no tip scored', {}],
  ['one tip scored', { A: '1' }],
  ['all tips alike', { A: '1', B: '1', C: '1', D: '1' }],
  ['tips that may all be alike', { A: '1', B: '01', C: '12', D: '1' }],
])('with %s there is no step and no index', (_, states) => {
  const tree = parseNewick('((A,B),(C,D));');
  const none = { steps: 0, minimum: 0, maximum: 0, consistency: null, retention: null };
  expect(fitCharacter(tree, characterOf(states))).toEqual({ ...none, informative: false });
  expect(isInformative(tree, characterOf(states))).toBe(false);
});

test('an empty matrix and a tree of one tip have no index', () => {
  const none = { steps: 0, minimum: 0, maximum: 0, consistency: null, retention: null };
  expect(fitMatrix(parseNewick('((A,B),C);'), [])).toEqual({ ...none, counted: 0, characters: [] });
  expect(fitMatrix(parseNewick('A;'), [characterOf({ A: '1' })])).toMatchObject({ ...none, counted: 1 });
});

function randomCharacter(tree: Tree, random: () => number): Character {
  const draw = (): string[] => ['0', '1', '2'].filter(() => random() < 0.3);
  const certain = (): string[] => [String(Math.floor(random() * 3))];
  return new Map(tipsOf(tree).map((tip) => [tree.label[tip]!, random() < 0.25 ? draw() : certain()]));
}

function leastByForks(tree: Tree, character: Character): number {
  const states = ['0', '1', '2'];
  const chosen: string[] = [];
  const allowed = (node: number) => {
    const here = isTip(tree, node) ? (character.get(tree.label[node]!) ?? []) : [];
    return here.length > 0 ? here : states;
  };
  const choose = (node: number): number => {
    if (node < 0) return 0;
    let least = Infinity;
    for (const state of allowed(node)) {
      chosen[node] = state;
      const above = tree.parent[node]!;
      const changed = above >= 0 && chosen[above] !== state ? 1 : 0;
      least = Math.min(least, changed + choose(node - 1));
    }
    return least;
  };
  return choose(tree.parent.length - 1);
}
