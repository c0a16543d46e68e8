import { expect, test } from 'vitest';
import { bracketReadings, spreadOfState } from '../../../analysis/characters/index.ts';
import { characterOf } from '../../reference/character-rows.ts';

const group = { inside: ['A', 'B'], outside: ['C', 'D'] };

test('a state that all members and no one else have is unique and universal in both readings', () => {
  const spread = spreadOfState(characterOf({ A: '1', B: '1', C: '0', D: '0' }), '1', group);
  expect(spread).toMatchObject({
    universal: { strict: true, scored: true },
    unique: { strict: true, scored: true },
  });
});

test('a group that nobody has scored has nothing in common, and nothing scored outside is unique only to the scored', () => {
  expect(spreadOfState(characterOf({ C: '0', D: '0' }), '1', group).universal).toEqual({
    strict: false,
    scored: false,
  });
  expect(spreadOfState(characterOf({ A: '1', B: '1' }), '1', group).unique).toEqual({
    strict: false,
    scored: true,
  });
});

test('two relatives of which nothing is known leave all three levels open, strongest first', () => {
  const open = bracketReadings({ first: undefined, second: undefined, signOnBone: false });
  expect(open.map(({ level, prime }) => [level, prime])).toEqual([
    ['I', true],
    ['II', true],
    ['III', true],
  ]);
});
