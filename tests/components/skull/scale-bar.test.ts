import { expect, test } from 'vitest';
import { phone, wide } from '../../../components/figures/scene/layout.ts';
import { barLengthMm, scaleBarMarks } from '../../../components/figures/scene/scale-bar.ts';
import type { Mark } from '../../../components/figures/scene/scene.ts';
import type { Scales } from '../../../components/figures/scene/scales.ts';

const scales = { unit: 2.5 } as Scales; // the bar reads nothing else
const mark = (role: string, shape: Mark['shape']): Mark => ({ layer: 'focus', role, shape });
const bar = (mmPerUnit: number | undefined, layout = wide) => scaleBarMarks(mmPerUnit, layout, scales, mark);

test.each([
  [59.9, 50],
  [50, 50],
  [49.9, 20],
  [19, 10],
  [100, 100],
  [0.7, 0.5],
  [0.0021, 0.002],
])('with room for %s mm a bar is %s mm long', (room, length) => {
  expect(barLengthMm(room)).toBe(length);
});

test.each([0, -3, NaN, Infinity])('with room for %s mm there is no bar', (room) => {
  expect(barLengthMm(room)).toBeUndefined();
});

test('the bar is as long on the plate as its millimetres are', () => {
  const [line, words] = bar(1.428);
  const [left, right] = /M([\d.]+) [\d.]+H([\d.]+)/
    .exec((line!.shape as { d: string }).d)!
    .slice(1)
    .map(Number);
  // 50 mm of a skull of 1.428 mm a unit, at 2.5 px a unit
  expect(right! - left!).toBeCloseTo((50 / 1.428) * 2.5, 1);
  expect(words!.shape).toMatchObject({ runs: [{ text: '50 mm' }] });
});

test('the bar ends where its layout has room', () => {
  for (const layout of [wide, phone])
    expect((bar(1.4, layout)[0]!.shape as { d: string }).d).toContain(`H${layout.scaleBar.right}`);
});

test('a skull of unknown size has no bar', () => {
  expect(bar(undefined)).toEqual([]);
});
