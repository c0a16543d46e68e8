import { expect, test } from 'vitest';
import {
  cheapestHistories,
  countSteps,
  irreversibleCost,
  orderedCost,
  unorderedCost,
} from '../../../analysis/characters/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { parseNewick, tipsOf } from '../../../analysis/tree/index.ts';
import { characterOf } from '../../reference/character-rows.ts';
import { randomTree } from '../../reference/random-tree.ts';

const states = ['0', '1', '2'];
const tree = parseNewick('((A,B),(C,D));');

test('without order the least cost is the number of steps, on any tree', () => {
  const random = seededRandom('least cost');
  for (let round = 0; round < 100; round++) {
    const any = randomTree(3 + Math.floor(random() * 8), random, { polytomies: true });
    const character = characterOf(
      Object.fromEntries(
        tipsOf(any).map((tip) => [any.label[tip]!, states.filter(() => random() < 0.5).join('')]),
      ),
    );
    const { cost } = cheapestHistories(any, character, { states, cost: unorderedCost });
    expect(cost).toBe(countSteps(any, character));
  }
});

test('ordered changes cost what lies between, and turning the order round changes nothing', () => {
  const character = characterOf({ A: '0', B: '2', C: '2', D: '0' });
  const there = cheapestHistories(tree, character, { states, cost: orderedCost });
  const back = cheapestHistories(tree, character, { states: states.toReversed(), cost: orderedCost });
  expect([there.cost, back.cost]).toEqual([4, 4]);
  expect(there.count).toBe(back.count);
  expect(there.statesAt.map((own) => [...own].sort())).toEqual(back.statesAt.map((own) => [...own].sort()));
});

test('what may not go back starts low, and with all tips unscored nothing costs anything', () => {
  const gained = cheapestHistories(tree, characterOf({ A: '1', B: '0', C: '1', D: '1' }), {
    states: ['0', '1'],
    cost: irreversibleCost,
  });
  expect(gained).toMatchObject({ cost: 2, count: 1 });
  expect(gained.statesAt[tree.parent.length - 1]).toEqual(['0']);
  const unscored = cheapestHistories(tree, characterOf({}), { states, cost: unorderedCost });
  expect(unscored).toMatchObject({ cost: 0, count: 3 });
});

test('costs that forbid every history are told, and a state that is not listed is refused', () => {
  const never = cheapestHistories(tree, characterOf({ A: '0', B: '1' }), {
    states,
    cost: (above, below) => (above === below ? 0 : Infinity),
  });
  expect(never).toMatchObject({ cost: Infinity, count: 0 });
  expect(never.statesAt.every((own) => own.length === 0)).toBe(true);
  expect(() => cheapestHistories(tree, characterOf({ A: '7' }), { states, cost: unorderedCost })).toThrow(
    'state "7" is not one of 0, 1, 2',
  );
});
