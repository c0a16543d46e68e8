import { expect, test } from 'vitest';
import { reachOf, rowsOf } from '../../../components/figures/bracket-tree/rows.ts';
import { kinFrom } from './relationships.ts';

const bush = kinFrom('((a,b)f1,(c,d,e)f2)f0');
const rows = rowsOf(bush, (animal) => 'abcde'.indexOf(animal));

test('a fork stands halfway between the first and the last of what hangs on it', () => {
  expect(rows.get('f1')).toBe(0.5);
  expect(rows.get('f2')).toBe(3);
  expect(rows.get('f0')).toBe(1.75);
});

test('the line across a fork reaches from the first to the last of its children', () => {
  expect(reachOf(bush, rows)).toEqual([0.5, 3]);
  expect(reachOf(bush.children[1]!, rows)).toEqual([2, 4]);
});

test('one animal alone stands in its own row', () => {
  expect([...rowsOf(kinFrom('a'), () => 4)]).toEqual([['a', 4]]);
});
