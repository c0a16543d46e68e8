import { expect, test } from 'vitest';
import { hashText, normalDraw, seededRandom } from '../../../analysis/random/index.ts';

test('the same keys give the same numbers and other keys others', () => {
  const take = (...keys: (string | number)[]) => {
    const random = seededRandom(...keys);
    return [random(), random(), random()];
  };
  expect(take(1, 'age', 'bed')).toEqual(take(1, 'age', 'bed'));
  const starts = ['a', 'b', 'ab', 1, '1', 2].map((key) => take(key)[0]);
  expect(new Set([...starts, take('a', 'b')[0], take('b', 'a')[0]]).size).toBe(8);
});

test('numbers fill the unit interval evenly', () => {
  const random = seededRandom('even');
  const counts = new Array<number>(20).fill(0);
  for (let k = 0; k < 40_000; k++) counts[Math.floor(20 * random())]!++;
  const statistic = counts.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0);
  // chi-squared with 19 degrees of freedom exceeds 43.8 once in a thousand: handbook table
  expect(statistic).toBeLessThan(43.82);
});

test('the first numbers of neighbouring keys are unrelated', () => {
  const firsts = Array.from({ length: 20_000 }, (_, draw) => seededRandom('seed', draw)() - 0.5);
  const product = firsts.slice(1).reduce((sum, one, k) => sum + one * firsts[k]!, 0) / firsts.length;
  expect(Math.abs(product / (1 / 12))).toBeLessThan(4 / Math.sqrt(firsts.length));
});

test('normal draws have mean 0, variance 1 and the tails of the normal distribution', () => {
  const random = seededRandom('bell');
  const draws = Array.from({ length: 40_000 }, () => normalDraw(random));
  const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
  const square = draws.reduce((sum, draw) => sum + draw ** 2, 0) / draws.length;
  expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(draws.length));
  expect(Math.abs(square - 1)).toBeLessThan(4 * Math.sqrt(2 / draws.length));
  const beyond = draws.filter((draw) => Math.abs(draw) > 1.959963984540054).length / draws.length;
  expect(Math.abs(beyond - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / draws.length));
});

test('hashText spreads texts that differ in one letter', () => {
  expect(new Set(['a', 'b', 'aa', 'ab', '', 'ñ'].map(hashText)).size).toBe(6);
});
