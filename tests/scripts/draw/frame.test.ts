import { describe, expect, test } from 'vitest';
import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import { toFrame, type MeasuredFrame } from '../../../scripts/compile/draw/frame.ts';

const picture = new Map<string, PlanePoint>([
  ['tip', [200, 1000]],
  ['rim', [700, 500]],
  ['tooth', [450, 900]],
]);
const frame: MeasuredFrame = { zero: 'tip', reading: 'rim', hundred: 'rim', level: 'tooth' };
const directions: PlanePoint[] = [
  [1, 0],
  [0.8, -0.6],
  [-0.8, 0.6],
  [0.28, 0.96],
];

/** Angle at the rim from the tip to the tooth, signed, in radians. */
function turnOf(points: ReadonlyMap<string, PlanePoint>): number {
  const [tip, rim, tooth] = ['tip', 'rim', 'tooth'].map((id) => points.get(id)!) as [
    PlanePoint,
    PlanePoint,
    PlanePoint,
  ];
  const bearing = ([x, y]: PlanePoint) => Math.atan2(y - rim[1], x - rim[0]);
  return bearing(tooth) - bearing(tip);
}

describe('the frame of a drawing', () => {
  test.each(directions)('puts the measured line from 0 to 100 and the level at 0, along %d, %d', (x, y) => {
    const laid = toFrame(picture, frame, [x, y], picture.get('tip')!)!;
    expect(laid.get('tip')![0]).toBeCloseTo(0, 12);
    expect(laid.get('rim')![0]).toBeCloseTo(100, 12);
    expect(laid.get('tooth')![1]).toBeCloseTo(0, 12);
  });

  test.each(directions)('keeps angles and the order of sides along %d, %d: it never mirrors', (x, y) => {
    const laid = toFrame(picture, frame, [x, y], picture.get('tip')!)!;
    expect(Math.cos(turnOf(laid))).toBeCloseTo(Math.cos(turnOf(picture)), 12);
    expect(Math.sin(turnOf(laid))).toBeCloseTo(Math.sin(turnOf(picture)), 12);
  });

  test('takes the point of a break as its start', () => {
    const laid = toFrame(picture, frame, [1, 0], [300, 800])!;
    expect(laid.get('tip')![0]).toBeCloseTo(-25, 12);
    expect(laid.get('rim')![0]).toBeCloseTo(100, 12);
  });

  test('is not there without an end, or where the ends lie across the axis', () => {
    expect(toFrame(picture, { ...frame, hundred: 'nape' }, [1, 0], [0, 0])).toBeUndefined();
    expect(toFrame(picture, { ...frame, level: 'nape' }, [1, 0], [0, 0])).toBeUndefined();
    expect(toFrame(picture, frame, [1, 0], [700, 3])).toBeUndefined();
  });
});
