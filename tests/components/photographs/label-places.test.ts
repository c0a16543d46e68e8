import { expect, test } from 'vitest';
import { labelPlaces } from '../../../components/photographs/label-places.ts';

const sizes = { radius: 5, letters: 20 };

test('the number of a point alone stands at its upper right', () => {
  expect(labelPlaces([[100, 100]], sizes)).toEqual([{ x: 108.5, y: 94, anchor: 'start' }]);
});

test('of two points side by side, the number of the first turns away from the second', () => {
  const [first, second] = labelPlaces([[100, 100], [114, 92]], sizes); // prettier-ignore
  expect(first!.anchor).toBe('end');
  expect(second!.anchor).toBe('start');
});

test('numbers of points in a bunch cover neither each other nor a point, where there is room', () => {
  const bunch = [[100, 100], [118, 100], [100, 120], [118, 120]] as const; // prettier-ignore
  const places = labelPlaces(bunch, sizes);
  const boxes = places.map(({ x, y, anchor }) => ({ left: anchor === 'end' ? x - 12 : x, bottom: y }));
  const covers = (box: (typeof boxes)[number], left: number, top: number, right: number, bottom: number) =>
    box.left < right && left < box.left + 12 && box.bottom - 14 < bottom && top < box.bottom;
  boxes.forEach((box, index) => {
    for (const [x, y] of bunch) expect(covers(box, x - 5, y - 5, x + 5, y + 5)).toBe(false);
    for (const other of boxes.slice(index + 1))
      expect(covers(box, other.left, other.bottom - 14, other.left + 12, other.bottom)).toBe(false);
  });
});
