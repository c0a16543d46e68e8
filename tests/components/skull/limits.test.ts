import { expect, test } from 'vitest';
import { shapeAtValue, shapeTrend, type Shape } from '../../../analysis/geometry/index.ts';
import { limitMarkup } from '../../../components/figures/skull-markup.ts';
import { limitOutlines } from '../../../components/figures/skull/limits.ts';
import { placeTemplate } from '../../../components/figures/skull/place-template.ts';
import type { SkullDrawing } from '../../../components/figures/skull/skull-drawing.ts';
import { boxOf, tornRegion } from '../../../components/figures/skull/torn-region.ts';
import { inventedSkulls } from './fixtures/invented-skulls.ts';

const shapeOf = ({ landmarks }: SkullDrawing): Shape =>
  new Map(Object.entries(landmarks).map(([id, { at }]) => [id, at]));
const readingOf = (drawing: SkullDrawing) => drawing.landmarks['naris-posterior']!.at[0];

const drawing = inventedSkulls.find(({ id }) => id === 'no-face')!;
const trend = shapeTrend(
  inventedSkulls
    .filter(({ accent }) => accent?.status === 'measured')
    .map((each) => ({ shape: shapeOf(each), value: readingOf(each) })),
);
const held = new Set([
  ...Object.entries(drawing.landmarks).flatMap(([id, { basis }]) => (basis === 'digitised' ? [id] : [])),
  'prosthion',
  'anterior-orbital-rim',
]);

function endAt(value: number) {
  const shape = shapeAtValue(shapeOf(drawing), trend, { reading: 'naris-posterior', value, held });
  const landmarks = Object.fromEntries(
    [...shape].map(([id, at]) => [id, { at, basis: drawing.landmarks[id]!.basis }]),
  );
  return { landmarks, value };
}

test('a restoration has one dotted outline for each end of its interval, and nothing else', () => {
  const shapes = limitOutlines(drawing, 'naris-posterior', [endAt(33), endAt(58)]);
  expect(shapes.map(({ role }) => role)).toEqual(['limit', 'limit']);
});

test('a limit at the middle value has no outline of its own', () => {
  expect(limitOutlines(drawing, 'naris-posterior', [endAt(46)])).toEqual([]);
});

test('a limit whose shape does not read its value is refused', () => {
  expect(() => limitOutlines(drawing, 'naris-posterior', [{ ...endAt(33), value: 36 }])).toThrow(
    'naris-posterior of no-face stands at 33',
  );
});

test('on a page the two ends are one group of thin lines, beside the middle and not instead of it', () => {
  const ends = [33, 58].map((value) => {
    const { landmarks } = endAt(value);
    const restored = Object.entries(landmarks).filter(([id]) => !held.has(id));
    return {
      value,
      points: Object.fromEntries(restored.map(([id, { at }]) => [id, [at[0], at[1]] as [number, number]])),
    };
  });
  const markup = limitMarkup(drawing, 'naris-posterior', ends);
  expect(markup).toMatch(
    /^<g class="skull-limits">(<path class="skull-limit" [^>]*stroke-dasharray[^>]*\/>){2}<\/g>$/,
  );
});

test('a skull whose restoration has no ends has no group of them', () => {
  expect(limitMarkup(drawing, 'naris-posterior', undefined)).toBe('');
});

test('what is restored goes on beyond the room around the middle skull, so that a far limit has no gap', () => {
  const placed = placeTemplate(drawing, 1.8);
  const { isRestored } = tornRegion(drawing, 'cranium', placed);
  const [left, , right] = boxOf(placed);
  const face = [left + 12, left + 2, left - 2, left - 60].map((x) => isRestored([x, 0]));
  expect(face).toEqual([true, true, true, true]);
  expect([right - 2, right + 2, right + 60].map((x) => isRestored([x, 0]))).toEqual([false, false, false]);
});
