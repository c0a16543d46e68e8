import { expect, test } from 'vitest';
import { differences, leavesOf, openItems, type Account, type Check } from './account.ts';

const values = { input: [1, 2], answer: { sum: 3, name: 'three', odd: true, gap: null }, remark: 'added' };
const known = leavesOf(values);
const check = (answer: Check['answer']): Check => ({ claim: 'the sum', at: 'answer', within: 1e-9, answer });
const right = check(() => ({ sum: 3, name: 'three', odd: true, gap: null }));
const account: Account = {
  name: 'sums',
  values,
  checks: [right],
  given: ['input'],
  described: { remark: 'a word' },
};

test('an answer that agrees has no difference, and each kind of value can differ', () => {
  expect(differences(known, right)).toEqual([]);
  expect(
    differences(
      known,
      check(() => ({ sum: 3.00001, name: 'four', odd: false, gap: 0 })),
    ),
  ).toHaveLength(4);
  expect(
    differences(
      known,
      check(() => ({ sum: NaN })),
    ),
  ).toEqual(['answer/sum: known 3, found NaN']);
  expect(
    differences(
      known,
      check(() => ({ total: 3 })),
    ),
  ).toEqual(['answer/total: the file has no such value']);
});

test('a difference is a share of the known value, or of a size', () => {
  const near = { ...right, within: 1e-3, answer: () => ({ sum: 3.004 }) };
  expect(differences(known, near)).toHaveLength(1);
  expect(differences(known, { ...near, size: 5 })).toEqual([]);
});

test('a value that is passed over is an open item, and so is a reason that stands for nothing', () => {
  expect(openItems(account)).toEqual([]);
  expect(openItems({ ...account, checks: [check(() => ({ sum: 3, odd: true }))] })).toEqual([
    'answer/name',
    'answer/gap',
  ]);
  expect(openItems({ ...account, given: [] })).toEqual(['input/0', 'input/1']);
  expect(openItems({ ...account, described: { remark: 'a word', 'answer/*': 'compared already' } })).toEqual([
    'answer/*: stands for no value that is not compared',
  ]);
});
