import { describe, expect, test } from 'vitest';
import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import { beyondBreaks, leastBeyond } from '../../../scripts/compile/draw/beyond-breaks.ts';

const found = new Map<string, PlanePoint>([
  ['naris', [12, -20]],
  ['eye', [100, -40]],
  ['nape', [210, -50]],
]);
const snout = {
  landmark: 'tip',
  points: [
    [-1, -10],
    [0, 0],
  ] as PlanePoint[],
};

describe('restored points', () => {
  test('that fell behind a break are pushed along the axis, just beyond the edge at their own height', () => {
    const pushed = beyondBreaks(new Map([['tip', [4, -5]]]), found, [snout]);
    expect(pushed.get('tip')).toEqual([-0.5 - leastBeyond, -5]);
  });

  test('that stand beyond already stay, and so do those beside or behind the bone', () => {
    const restored = new Map<string, PlanePoint>([
      ['tip', [-8, -5]],
      ['tooth', [60, 0]],
    ]);
    expect(beyondBreaks(restored, found, [snout])).toEqual(restored);
  });

  test('above and below the recorded edge are held by its nearer end', () => {
    const restored = new Map<string, PlanePoint>([
      ['roof', [3, -30]],
      ['chin', [3, 20]],
    ]);
    const pushed = beyondBreaks(restored, found, [snout]);
    expect(pushed.get('roof')).toEqual([-1 - leastBeyond, -30]);
    expect(pushed.get('chin')).toEqual([-leastBeyond, 20]);
  });

  test('behind a lost nape are pushed the other way', () => {
    const nape = { landmark: 'condyle', points: [[220, -20]] as PlanePoint[] };
    expect(beyondBreaks(new Map([['condyle', [214, -20]]]), found, [nape]).get('condyle')).toEqual([
      220 + leastBeyond,
      -20,
    ]);
  });

  test('stay where there is no break, or no bone', () => {
    const restored = new Map<string, PlanePoint>([['tip', [4, -5]]]);
    expect(beyondBreaks(restored, found, [])).toEqual(restored);
    expect(beyondBreaks(restored, new Map(), [snout])).toEqual(restored);
  });
});
