import { expect, test } from 'vitest';
import { gatherDraws } from '../../../analysis/estimate/limits/gather-draws.ts';
import {
  MixtureParts,
  mixtureMoments,
  mixtureQuantile,
  type Mixture,
} from '../../../analysis/estimate/mixture.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';

const random = seededRandom('draws');
const at = Float64Array.from({ length: 2000 }, () => Math.abs(normalDraw(random)));
const weights = new Float64Array(at.length).fill(1 / at.length);

function kept(parts: MixtureParts): Mixture {
  return parts.finish(({ weights, means, deviations }) => ({
    weights: weights.slice(),
    means: means.slice(),
    deviations: deviations.slice(),
  }));
}

function oneByOne(variance: number) {
  const parts = new MixtureParts();
  at.forEach((place, k) => parts.add(weights[k]!, 10 + place, variance));
  return kept(parts);
}

function gathered(variance: number, effort: 'full' | 'light') {
  const parts = new MixtureParts();
  gatherDraws(parts, { at, weights }, { weight: 1, mean: 10, variance }, effort);
  return kept(parts);
}

test.each([
  ['full', 0.04, 1e-4],
  ['full', 2, 1e-5],
  ['light', 0.04, 2e-3],
  ['light', 2, 2e-4],
] as const)(
  'draws in classes at %s effort about a variance of %d have the quantiles of each draw alone',
  (effort, variance, near) => {
    const [each, few] = [oneByOne(variance), gathered(variance, effort)];
    expect(few.weights.length).toBeLessThan(100);
    for (const share of [0.025, 0.5, 0.975])
      expect(Math.abs(mixtureQuantile(few, share) - mixtureQuantile(each, share))).toBeLessThan(near);
  },
);

test('classes keep mean and variance to eleven digits, also where nothing is left open', () => {
  for (const variance of [0, 1e-12, 0.3]) {
    const [each, few] = [mixtureMoments(oneByOne(variance)), mixtureMoments(gathered(variance, 'full'))];
    expect(few.mean).toBeCloseTo(each.mean, 11);
    expect(few.variance).toBeCloseTo(each.variance, 11);
  }
});

test('equal places are one part', () => {
  const parts = new MixtureParts();
  const same = { at: Float64Array.of(3, 3, 3), weights: Float64Array.of(0.2, 0.3, 0.5) };
  gatherDraws(parts, same, { weight: 0.5, mean: 1, variance: 2 }, 'full');
  expect(kept(parts)).toEqual({
    weights: Float64Array.of(1),
    means: Float64Array.of(4),
    deviations: Float64Array.of(Math.sqrt(2)),
  });
});

test('a mixture in room that another has used holds none of what was in it', () => {
  const first = new MixtureParts();
  for (let k = 0; k < 1000; k++) first.add(1, k, 1);
  first.finish(() => undefined);
  const second = new MixtureParts();
  second.add(3, 7, 4);
  expect(kept(second)).toEqual({
    weights: Float64Array.of(1),
    means: Float64Array.of(7),
    deviations: Float64Array.of(2),
  });
});
