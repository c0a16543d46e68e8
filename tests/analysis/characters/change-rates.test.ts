import { expect, test } from 'vitest';
import {
  changeLikelihood,
  changeProbabilities,
  equalRates,
  findBestChangeRate,
  gainAndLossRates,
} from '../../../analysis/characters/index.ts';
import { parseNewick } from '../../../analysis/tree/index.ts';
import { characterOf } from '../../reference/character-rows.ts';

const states = ['0', '1'];

test('probabilities of change add up to 1, follow one another, and come to rest', () => {
  const rates = gainAndLossRates(0.3, 0.1);
  const [one, two, both, long] = [2, 5, 7, 1e5].map((time) => changeProbabilities(rates, time));
  for (const row of [...one!, ...both!])
    expect(row.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 14);
  expect(one![0]![0]! * two![0]![1]! + one![0]![1]! * two![1]![1]!).toBeCloseTo(both![0]![1]!, 14);
  expect(long![0]![0]).toBeCloseTo(0.25, 9);
  expect(changeProbabilities(rates, 0).map((row) => [...row])).toEqual([
    [1, 0],
    [0, 1],
  ]);
});

test('equal rates in one line are those of the series that any rates take', () => {
  for (const time of [0, 0.01, 3, 400]) {
    const line = changeProbabilities(equalRates(2, 0.02), time);
    // a gain that differs in its last digits takes the series
    const bySeries = changeProbabilities(gainAndLossRates(0.02 * (1 + 1e-15), 0.02), time);
    line.forEach((row, from) =>
      row.forEach((share, to) => expect(share).toBeCloseTo(bySeries[from]![to]!, 13)),
    );
  }
});

test('the place of the root does not matter where changes go both ways alike', () => {
  const character = characterOf({ A: '0', B: '1', C: '1', D: '0' });
  const likelihoods = ['((A:3,B:2):1,(C:4,D:5):1);', '(A:1,((C:4,D:5):2,B:2):2);'].map(
    (newick) =>
      changeLikelihood({ tree: parseNewick(newick), character, states, rates: equalRates(2, 0.1) })
        .logLikelihood,
  );
  expect(likelihoods[0]).toBeCloseTo(likelihoods[1]!, 12);
});

test('a thousand tips lose no digits to ever smaller products', () => {
  const comb = Array.from({ length: 999 }, (_, k) => `t${k}`).reduce(
    (inner, tip) => `(${inner}:1,${tip}:1)`,
    't999',
  );
  const tree = parseNewick(`${comb};`);
  const character = characterOf(
    Object.fromEntries(Array.from({ length: 1000 }, (_, k) => [`t${k}`, String(k % 2)])),
  );
  // changes so many that every tip is a toss of a coin
  const { logLikelihood } = changeLikelihood({ tree, character, states, rates: equalRates(2, 1e3) });
  expect(logLikelihood).toBeCloseTo(1000 * Math.log(0.5), 6);
});

test('what the rates forbid is told, and wrong rates, times and states are refused', () => {
  const tree = parseNewick('(A:1,B:1);');
  const ask = (own: Record<string, string>, gain: number) =>
    changeLikelihood({
      tree,
      character: characterOf(own),
      states,
      rates: gainAndLossRates(gain, 0),
      rootShares: [1, 0],
    });
  expect(ask({ A: '1' }, 0).logLikelihood).toBe(-Infinity);
  expect(() => ask({ A: '3' }, 1)).toThrow('state "3" is not one of 0, 1');
  expect(() => ask({ A: '1' }, -1)).toThrow('a rate of change must be 0 or more, got -1');
  expect(() => changeProbabilities(equalRates(2, 1), NaN)).toThrow('a time must be 0 Myr or more, got NaN');
});

test('a tree without lengths has no rate', () => {
  const question = { tree: parseNewick('(A,B);'), character: characterOf({ A: '0', B: '1' }), states };
  expect(() => findBestChangeRate(question, equalRates)).toThrow(
    'needs a tree with branches in million years',
  );
});

test('a character that nobody scores has no rate: it is as likely without change', () => {
  const tree = parseNewick('((A:1,B:1):1,C:2);');
  expect(findBestChangeRate({ tree, character: characterOf({}), states }, equalRates)).toEqual({
    rate: 0,
    logLikelihood: 0,
    onBound: 'no-change',
  });
});
