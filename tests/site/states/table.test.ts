import { expect, test } from 'vitest';
import { allPairs, pairsOf } from './pairs.ts';
import { choices, isPossible, states } from './table.ts';

test('the table of states holds every pair of values that can meet, in at most 120 runs', () => {
  const held = new Set(states.flatMap(pairsOf));
  expect([...allPairs(choices, isPossible)].filter((pair) => !held.has(pair))).toEqual([]);
  expect(states.length).toBeLessThanOrEqual(120);
});

test('every state of the table is looked at, by day or by night', () => {
  expect(new Set(states.map(({ theme }) => theme))).toEqual(new Set(['paper', 'night']));
});
