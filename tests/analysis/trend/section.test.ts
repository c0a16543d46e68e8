import { expect, test } from 'vitest';
import { fitSection, type SectionLevel } from '../../../analysis/trend/index.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { levelsOf, referenceSections } from '../../reference/section-levels.ts';

const cases = Object.values(referenceSections);

test('limits hold the best value, and reach 0 where the variance is on its bound', () => {
  for (const section of cases) {
    const models = fitSection(levelsOf(section), { form: 'joint', pooled: true });
    if (typeof models === 'string') throw new Error(models);
    for (const { variance, varianceLimits, varianceOnBound, meanStep, meanStepLimits } of models) {
      expect(varianceLimits[0]).toBeLessThanOrEqual(variance);
      expect(varianceLimits[1]).toBeGreaterThan(variance);
      if (varianceOnBound) expect(varianceLimits[0]).toBe(0);
      if (!meanStepLimits) continue;
      expect(meanStepLimits[0]).toBeLessThan(meanStep!);
      expect(meanStepLimits[1]).toBeGreaterThan(meanStep!);
    }
  }
});

test('limits of the mean step hold the true step in about 95 of 100 simulated walks', () => {
  let held = 0;
  for (let set = 0; set < 200; set++) {
    const random = seededRandom('walk', set);
    let value = 10;
    const levels = Array.from({ length: 25 }, (_, k): SectionLevel => {
      value += k === 0 ? 0 : 0.4 * 0.1 + Math.sqrt(0.2 * 0.1) * normalDraw(random);
      return {
        elapsedMyr: 0.1 * k,
        mean: value + Math.sqrt(0.01 / 20) * normalDraw(random),
        variance: 0.01,
        n: 20,
      };
    });
    const models = fitSection(levels, { form: 'joint', pooled: true });
    if (typeof models === 'string') throw new Error(models);
    const [low, high] = models.find(({ name }) => name === 'directional-walk')!.meanStepLimits!;
    held += Number(low <= 0.4 && high >= 0.4);
  }
  // 99.9% binomial limits of 200 at 95%
  expect(held / 200).toBeGreaterThan(0.895);
});

test('levels in any order give the same fit', () => {
  const levels = levelsOf(cases[0]!);
  const options = { form: 'joint', pooled: true } as const;
  expect(fitSection([...levels].reverse(), options)).toEqual(fitSection(levels, options));
});

test('too few levels, equal ages and no variance are answered', () => {
  const options = { form: 'joint', pooled: false } as const;
  const level = (elapsedMyr: number, variance = 1, n = 5): SectionLevel => ({
    elapsedMyr,
    mean: elapsedMyr,
    variance,
    n,
  });
  expect(fitSection([level(0), level(1)], options)).toBe('fewer-than-three-levels');
  expect(fitSection([level(0), level(1), level(1)], options)).toBe('equal-ages');
  expect(fitSection([level(0), level(1), level(2, 0)], options)).toBe('no-variance');
  const short = fitSection([level(0), level(1), level(2)], options);
  if (typeof short === 'string') throw new Error(short);
  expect(short.map(({ aicc, weight }) => [aicc, weight])).toEqual([
    [null, null],
    [null, null],
    [null, null],
  ]);
  const lone = fitSection([level(0, 2, 6), level(1, 0, 1), level(2, 2, 6), level(3, 2, 6)], {
    form: 'joint',
    pooled: true,
  });
  expect(typeof lone).not.toBe('string');
});
