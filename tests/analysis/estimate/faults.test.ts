import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateTrait, type Observation, type TraitAnswer } from '../../../analysis/estimate/index.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { randomTree } from '../../reference/random-tree.ts';

/** Fails on any number of an answer that is not finite, or an interval out of order. */
function expectSound(answer: TraitAnswer): void {
  if (!answer.estimated) return;
  const { model } = answer;
  expect([model.rateMedian, ...model.rateInterval, model.rateReml, model.rateMl].every(Number.isFinite)).toBe(
    true,
  );
  for (const { median, interval, standardDeviation, relatives } of answer.nodes) {
    expect([median, ...interval, standardDeviation].every(Number.isFinite)).toBe(true);
    expect(interval[0]).toBeLessThanOrEqual(median);
    expect(interval[1]).toBeGreaterThanOrEqual(median);
    if (relatives) expect(relatives.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
  }
}

test('any sizes of values and errors on any tree give sound numbers or a reason', () => {
  fc.assert(
    fc.property(
      fc.integer(),
      fc.integer({ min: 2, max: 14 }),
      fc.constantFrom(1e-9, 1e-3, 1, 1e4, 1e9),
      fc.constantFrom(0, 1e-9, 1e-3, 1, 100),
      fc.constantFrom('brownian' as const, 'trend' as const, 'auto' as const),
      (seed, tips, size, errorShare, model) => {
        const random = seededRandom('faults', seed);
        const tree = randomTree(tips, random, { polytomies: true });
        const observations = tree.label
          .filter((label) => label !== '' && random() < 0.8)
          .map((taxon) => ({
            taxon,
            mean: size * (5 + normalDraw(random)),
            variance: random() < 0.5 ? 0 : (size * errorShare * random()) ** 2,
          }));
        const missing = tree.label.find(
          (label) => label !== '' && !observations.some(({ taxon }) => taxon === label),
        );
        const limits = missing
          ? [{ taxon: missing, specimen: 'x', atLeast: 5 * size, twigVariance: size * size }]
          : [];
        expectSound(estimateTrait({ tree, observations, model, limits: random() < 0.3 ? limits : [] }));
      },
    ),
    { numRuns: 300, seed: 7 },
  );
});

const six = dateAsGiven(parseNewick('((a:3,b:5):4,((c:2,d:6):1,(e:4,f:3):2):3);'));
const given = (means: readonly number[], variance: number): Observation[] =>
  means.map((mean, index) => ({ taxon: 'abcdef'[index]!, mean, variance }));

test('values without any difference beyond their error have a rate of zero at best, and sound intervals', () => {
  const answer = estimateTrait({ tree: six, observations: given([5.0, 5.1, 4.9, 5.05, 4.95], 4) });
  expectSound(answer);
  if (!answer.estimated) throw new Error(answer.reason);
  expect(answer.model.rateReml).toBe(0);
  expect(answer.model.compared[0]).toMatchObject({ name: 'brownian', note: 'rate-at-zero' });
  expect(answer.model.rateMedian).toBeGreaterThan(0);
});

test('a value far from a close relative gives a high rate, not an endless one', () => {
  const near = dateAsGiven(parseNewick('((a:0.000001,b:0.000001):4,((c:2,d:6):1,(e:4,f:3):2):3);'));
  const answer = estimateTrait({ tree: near, observations: given([1, 1000, 5, 6, 7], 0) });
  expectSound(answer);
  expect(answer.estimated).toBe(true);
});

test('a tree of one tip, and a tree of no time, are answered or refused by name', () => {
  const one = dateAsGiven(parseNewick('a:0;'));
  expect(estimateTrait({ tree: one, observations: given([1], 0) })).toEqual({
    estimated: false,
    reason: 'fewer-than-four',
  });
  const star = dateAsGiven(parseNewick('(a:0,b:0,c:0,d:0);'));
  expect(() => estimateTrait({ tree: star, observations: given([1, 2, 3, 4], 0) })).toThrow(
    '"a" and "b" are exact',
  );
  expect(estimateTrait({ tree: star, observations: given([1, 2, 3, 4], 0.1) })).toEqual({
    estimated: false,
    reason: 'exact-values-equal',
  });
});

test('values on one straight line through time leave a trend no scatter, and auto falls back', () => {
  const depth = (label: string) => 20 - six.ageMa[six.label.indexOf(label)]!;
  const line = given(
    [...'abcdef'].map((label) => 3 + 2 * depth(label)),
    0,
  );
  expect(estimateTrait({ tree: six, observations: line, model: 'trend' })).toEqual({
    estimated: false,
    reason: 'trend-without-scatter',
  });
  expect(estimateTrait({ tree: six, observations: line, model: 'auto' })).toMatchObject({
    model: { name: 'brownian' },
  });
});
