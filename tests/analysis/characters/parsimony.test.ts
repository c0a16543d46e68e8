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
import known from '../../reference/values/parsimony.json' with { type: 'json' };
import { randomTree } from '../../reference/random-tree.ts';

const { matrix, minLength } = known.matrix1;

/** Numbers of trees without a root for 3 to 6 tips (Cavalli-Sforza and Edwards 1967, Evolution 21: 550–570). */
const treeCounts = { 3: 1, 4: 3, 5: 15, 6: 105 };

test('the search of the tests meets as many trees as there are', () => {
  for (const [tips, count] of Object.entries(treeCounts))
    expect(everyTree([...'ABCDEF'].slice(0, Number(tips)))).toHaveLength(count);
});

test('an unsure state takes whichever costs least and an unscored tip takes any', () => {
  const tree = parseNewick(`${known.mpr.tree};`);
  const unsure = { O: '0', A: '1', B: '01', C: '1', D: '', E: '1', F: '2' };
  expect(countSteps(tree, characterOf(known.mpr.tips))).toBe(known.mpr.unordered.minCost);
  expect(countSteps(tree, characterOf(unsure))).toBe(known.mpr.withMissingD_polymorphicB.unordered.minCost);
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
  const renamed = charactersOf(matrix).map(
    (column) => new Map([...column].map(([label, [state]]) => [label, [state === '0' ? 'there' : 'lost']])),
  );
  for (const newick of [
    '((Alpha,Beta),(Gamma,(Delta,Epsilon)));',
    '(Alpha,Beta,(Gamma,(Delta,Epsilon)));',
    '(Delta,(Epsilon,(Gamma,(Beta,Alpha))));',
  ])
    expect(fitMatrix(parseNewick(newick), renamed).steps).toBe(minLength);
});

test('a fork in five counts as one fork, which a tree in twos may better', () => {
  const { steps } = fitMatrix(parseNewick('(Alpha,Beta,Gamma,Delta,Epsilon);'), charactersOf(matrix));
  expect(steps).toBe(known.matrix1.best[0]!.g.reduce((sum, count) => sum + count, 0));
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
