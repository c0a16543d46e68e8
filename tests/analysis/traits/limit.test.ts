import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  brokenAngle,
  brokenLength,
  brokenRatio,
  findBrokenRatioReadings,
  limitOfBroken,
  roundOutward,
  stepFor,
  workingRows,
} from '../../../analysis/traits/index.ts';

const exact = (mm: number) => ({ mm, error: 0 });

test('a lost end in part and whole makes a floor below 100% and a ceiling above, with 100% never printed', () => {
  const below = brokenRatio({ part: exact(31), whole: exact(100), lostAddsTo: 'both', times: 100 });
  expect(limitOfBroken([below])).toMatchObject({ found: true, atLeast: 31, asymptote: 100 });
  expect(limitOfBroken([below])).not.toHaveProperty('atMost');
  const above = brokenRatio({ part: exact(108), whole: exact(100), lostAddsTo: 'both', times: 100 });
  expect(limitOfBroken([above])).toMatchObject({ found: true, atMost: 108, asymptote: 100 });
});

test('a lost end of the part only is a floor, of the whole only a ceiling', () => {
  const part = brokenRatio({ part: exact(31), whole: exact(100), lostAddsTo: 'part', times: 100 });
  const whole = brokenRatio({ part: exact(31), whole: exact(100), lostAddsTo: 'whole', times: 100 });
  expect(limitOfBroken([part])).toEqual({ found: true, atLeast: 31, bare: { atLeast: 31, error: 0 } });
  expect(limitOfBroken([whole])).toMatchObject({ atMost: 31, asymptote: 0 });
});

test('a known most makes the far end a limit too', () => {
  const reading = brokenRatio({ part: exact(31), whole: exact(100), lostAddsTo: 'both', times: 100 });
  const limit = limitOfBroken([reading], { atMostMm: 60 });
  expect(limit).toMatchObject({ atLeast: 31, atMost: (100 * 91) / 160 });
  expect(limit).not.toHaveProperty('asymptote');
});

test('the printed limit is the safe end of its error, rounded outward', () => {
  const reading = brokenRatio({
    part: { mm: 31.4, error: 0.3 },
    whole: { mm: 100, error: 0.3 },
    lostAddsTo: 'both',
    times: 100,
  });
  const limit = limitOfBroken([reading], { step: 0.5 });
  if (!limit.found) throw new Error(limit.reason);
  const error = 100 * Math.hypot(0.3 / 100, (31.4 * 0.3) / 100 ** 2);
  expect(limit.bare).toEqual({
    atLeast: expect.closeTo(31.4, 10) as number,
    error: expect.closeTo(error, 10) as number,
  });
  expect(limit.atLeast).toBe(30.5);
  expect(limit.atLeast!).toBeLessThanOrEqual(31.4 - 1.959963984540054 * error);
});

test('the weakest of several break points counts', () => {
  const readings = [31, 28, 35].map((mm) =>
    brokenRatio({ part: exact(mm), whole: exact(100), lostAddsTo: 'both' }),
  );
  expect(limitOfBroken(readings)).toMatchObject({ atLeast: 0.28 });
});

test('break points on either side of 100% make no limit', () => {
  const readings = [90, 110].map((mm) =>
    brokenRatio({ part: exact(mm), whole: exact(100), lostAddsTo: 'both' }),
  );
  expect(limitOfBroken(readings)).toEqual({ found: false, reason: 'senses-differ' });
  expect(limitOfBroken([])).toEqual({ found: false, reason: 'no-reading' });
});

test('an angle that turns back as the arm grows has no limit, one that does not has', () => {
  const base = { vertex: [0, 0], second: [1, 0], coordinateError: 0 };
  const opening = brokenAngle({ ...base, breakPoint: [1, 1], outward: [0, 1] });
  const limit = limitOfBroken([opening]);
  expect(limit).toMatchObject({ found: true, asymptote: 90 });
  expect((limit as { atLeast: number }).atLeast).toBeCloseTo(45, 10);
  const turning = brokenAngle({ ...base, breakPoint: [5, 3], outward: [-0.6, -0.8] });
  expect(limitOfBroken([turning])).toEqual({ found: false, reason: 'not-monotone' });
});

test('a broken length is a floor without an asymptote', () => {
  expect(limitOfBroken([brokenLength({ mm: 240, error: 0 })])).toEqual({
    found: true,
    atLeast: 240,
    bare: { atLeast: 240, error: 0 },
  });
});

test('every length that may be lost reads within the limits', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.constantFrom('both' as const, 'part' as const, 'whole' as const),
      fc.double({ min: 0, max: 300, noNaN: true }),
      (partMm, wholeMm, lostAddsTo, lostMm) => {
        const reading = brokenRatio({ part: exact(partMm), whole: exact(wholeMm), lostAddsTo });
        const limit = limitOfBroken([reading], { atMostMm: 300 });
        if (!limit.found) throw new Error(limit.reason);
        const value = reading.valueAt(lostMm);
        expect(value).toBeGreaterThanOrEqual(limit.atLeast! * (1 - 1e-9));
        expect(value).toBeLessThanOrEqual(limit.atMost! * (1 + 1e-9));
      },
    ),
  );
});

test('an axis that may be off by some degrees gives the worst limit of all those directions', () => {
  const landmarks = new Map([
    ['naris', [60, 30]],
    ['rim', [100, 0]],
  ]);
  const question = {
    part: { from: 'tip', to: 'naris' },
    whole: { from: 'tip', to: 'rim' },
    lost: 'tip',
    breakPoints: [
      [0, 4],
      [2, -3],
    ],
    landmarks,
    direction: [1, 0],
    coordinateError: 0,
    times: 100,
  };
  const limitAt = (axisWithin: number) => {
    const limit = limitOfBroken(findBrokenRatioReadings({ ...question, axisWithin })!);
    if (!limit.found) throw new Error(limit.reason);
    return limit.bare.atLeast!;
  };
  const straight = limitAt(0);
  const within = limitAt(6);
  expect(within).toBeLessThan(straight);
  for (let degrees = -6; degrees <= 6; degrees += 0.25) {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    for (const [x, y] of question.breakPoints)
      expect(
        (100 * ((60 - x!) * cos + (30 - y!) * sin)) / ((100 - x!) * cos + (0 - y!) * sin),
      ).toBeGreaterThanOrEqual(within - 1e-9);
  }
});

test('a missing landmark, or a lost one in neither length, makes no reading', () => {
  const question = {
    part: { from: 'tip', to: 'naris' },
    whole: { from: 'tip', to: 'rim' },
    lost: 'tip',
    breakPoints: [[0, 0]],
    landmarks: new Map([['naris', [60, 0]]]),
    direction: [1, 0],
    coordinateError: 0,
  };
  expect(findBrokenRatioReadings(question)).toBeUndefined();
  expect(findBrokenRatioReadings({ ...question, lost: 'condyle' })).toBeUndefined();
});

test('rounding outward never moves a limit inward, nor a round value at all', () => {
  expect([roundOutward(31.26, 'down', 0.1), roundOutward(31.26, 'up', 0.1)]).toEqual([31.2, 31.3]);
  expect([roundOutward(31.3, 'down', 0.1), roundOutward(31.3, 'up', 0.1)]).toEqual([31.3, 31.3]);
  expect(roundOutward(-3.21, 'down', 1)).toBe(-4);
  expect(roundOutward(31.26, 'down', 0)).toBe(31.26);
  expect([stepFor(0.32), stepFor(2.4), stepFor(0)]).toEqual([0.1, 1, 0]);
});

test('the working shows what would be read with more and more restored', () => {
  const reading = brokenRatio({ part: exact(30), whole: exact(100), lostAddsTo: 'both', times: 100 });
  expect(workingRows(reading, 100)).toEqual([
    { lostMm: 0, value: 30 },
    { lostMm: 25, value: 44 },
    { lostMm: 50, value: expect.closeTo(160 / 3, 10) as number },
    { lostMm: 100, value: 65 },
  ]);
});
