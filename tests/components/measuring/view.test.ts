import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bringOn,
  fitView,
  levelView,
  toPicture,
  toStage,
  zoomAbout,
} from '../../../components/measuring/picture-view.ts';
import type { Place } from '../../../components/measuring/place.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyView = fc.record({
  zoom: number(0.01, 40),
  turnRad: number(-Math.PI, Math.PI),
  moved: fc.tuple(number(-5000, 5000), number(-5000, 5000)),
});
const anyPlace = fc.tuple(number(0, 10_000), number(0, 10_000));
const stage = { width: 800, height: 500 };

test('a place on the stage and in the picture are one place, however the picture lies', () => {
  fc.assert(
    fc.property(anyView, anyPlace, (view, place) => {
      const back = toPicture(view, toStage(view, place));
      expect(back[0]).toBeCloseTo(place[0], 6);
      expect(back[1]).toBeCloseTo(place[1], 6);
    }),
  );
});

test('enlarging keeps the place under the hand, within its bounds', () => {
  fc.assert(
    fc.property(anyView, fc.tuple(number(0, 800), number(0, 500)), number(0.1, 10), (view, point, factor) => {
      const next = zoomAbout(view, point, factor, 0.01);
      expect(next.zoom).toBeGreaterThanOrEqual(0.01);
      expect(next.zoom).toBeLessThanOrEqual(40);
      const [x, y] = toStage(next, toPicture(view, point));
      expect(x).toBeCloseTo(point[0], 5);
      expect(y).toBeCloseTo(point[1], 5);
    }),
  );
});

test('a level line lies level with its first end at the left, and its length is as it was', () => {
  fc.assert(
    fc.property(anyView, anyPlace, anyPlace, (view, from, to) => {
      fc.pre(Math.hypot(to[0] - from[0], to[1] - from[1]) > 1);
      const level = levelView(view, [from, to], stage);
      const [start, end] = [toStage(level, from), toStage(level, to)];
      expect(end[1]).toBeCloseTo(start[1], 4);
      expect(end[0]).toBeGreaterThan(start[0]);
      expect(end[0] - start[0]).toBeCloseTo(view.zoom * Math.hypot(to[0] - from[0], to[1] - from[1]), 4);
    }),
  );
});

test.each([0, 0.4, 2])(
  'the whole picture turned by %s rad fits the stage and touches two of its sides',
  (turnRad) => {
    const picture = { width: 2640, height: 1600 };
    const view = fitView(picture, stage, turnRad);
    const corners = [
      [0, 0],
      [2640, 0],
      [2640, 1600],
      [0, 1600],
    ].map((corner) => toStage(view, corner as unknown as Place));
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    const room = [
      Math.min(...xs),
      stage.width - Math.max(...xs),
      Math.min(...ys),
      stage.height - Math.max(...ys),
    ];
    expect(Math.min(...room)).toBeCloseTo(0, 8);
    expect(room[0]).toBeCloseTo(room[1]!, 8);
    expect(room[2]).toBeCloseTo(room[3]!, 8);
  },
);

test('a place that is seen moves nothing, and one that is not comes to the edge', () => {
  const view = { zoom: 1, turnRad: 0, moved: [0, 0] as const };
  expect(bringOn(view, [400, 200], stage).moved).toEqual([0, 0]);
  expect(toStage(bringOn(view, [2000, 200], stage), [2000, 200])).toEqual([760, 200]);
});
