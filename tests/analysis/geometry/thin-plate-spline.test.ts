import { describe, expect, test } from 'vitest';
import {
  applySpline,
  bendingEnergy,
  bendingEnergyMatrix,
  fitSpline,
  moveWithAreas,
  pointRun,
  splineDerivatives,
  type PlanePoint,
} from '../../../analysis/geometry/index.ts';
import { planePoints } from '../../reference/plane-points.ts';
import splines from '../../reference/values/splines.json' with { type: 'json' };

const { bookstein1989_fig: five, squareCentre } = splines.tps;
const fiveLandmarks = { from: planePoints(five.X), to: planePoints(five.Y) };
const movedMiddle = { from: planePoints(squareCentre.X), to: planePoints(squareCentre.Y) };

/** Digits printed by Bookstein 1989, from memory. */
const printed = {
  weightX: [-0.038, 0.0232, -0.0248, 0.0798, -0.0402],
  weightY: [0.0424, 0.0159, 0.0288, -0.0454, -0.0418],
  affineX: [1.355, 0.8747, -0.0289],
  affineY: [-2.946, -0.2956, 0.9216],
};

test('the five landmarks of Bookstein 1989 have the printed weights and affine part', () => {
  const spline = fitSpline(fiveLandmarks.from, fiveLandmarks.to);
  spline.weights.forEach(([x, y], index) => {
    expect(x).toBeCloseTo(printed.weightX[index]!, 4);
    expect(y).toBeCloseTo(printed.weightY[index]!, 4);
  });
  spline.affine.forEach(([x, y], index) => {
    expect(x).toBeCloseTo(printed.affineX[index]!, 4);
    expect(y).toBeCloseTo(printed.affineY[index]!, 4);
  });
});

test('the quadratic form of the bending energy matrix is the energy', () => {
  const matrix = bendingEnergyMatrix(fiveLandmarks.from);
  const form = (axis: 0 | 1) =>
    fiveLandmarks.to.reduce(
      (sum, one, row) =>
        sum +
        fiveLandmarks.to.reduce(
          (part, other, column) => part + one[axis] * matrix[row]![column]! * other[axis],
          0,
        ),
      0,
    );
  const energy = bendingEnergy(fitSpline(fiveLandmarks.from, fiveLandmarks.to));
  expect([form(0), form(1)]).toEqual(energy.map((each) => expect.closeTo(each, 12) as number));
});

describe('a spline', () => {
  test('bends nothing for an affine map, which it extends to the whole plane', () => {
    const map = ([x, y]: PlanePoint): PlanePoint => [2 + 1.2 * x - 0.1 * y, -1 + 0.3 * x + 0.9 * y];
    const spline = fitSpline(movedMiddle.from, movedMiddle.from.map(map));
    bendingEnergy(spline).forEach((energy) => expect(energy).toBeCloseTo(0, 12));
    const [x, y] = applySpline(spline, [40, -7]);
    expect(x).toBeCloseTo(map([40, -7])[0], 9);
    expect(y).toBeCloseTo(map([40, -7])[1], 9);
  });

  test('passes through its landmarks, also in picture pixels', () => {
    const far = fiveLandmarks.from.map(([x, y]): PlanePoint => [4000 + 700 * x, 9000 - 700 * y]);
    const spline = fitSpline(far, fiveLandmarks.to);
    far.forEach((place, index) => {
      const [x, y] = applySpline(spline, place);
      expect(x).toBeCloseTo(fiveLandmarks.to[index]![0], 8);
      expect(y).toBeCloseTo(fiveLandmarks.to[index]![1], 8);
    });
  });

  test('has the derivatives that small steps show', () => {
    const spline = fitSpline(fiveLandmarks.from, fiveLandmarks.to);
    const step = 1e-6;
    const at = (x: number, y: number) => applySpline(spline, [x, y]);
    const [right, left, down, up] = [at(5 + step, 10), at(5 - step, 10), at(5, 10 + step), at(5, 10 - step)];
    const measured = [right![0] - left![0], down![0] - up![0], right![1] - left![1], down![1] - up![1]];
    splineDerivatives(spline, [5, 10]).forEach((slope, index) =>
      expect(slope).toBeCloseTo(measured[index]! / (2 * step), 7),
    );
  });

  test('stretches the area by the determinant of its derivatives, where it puts the point', () => {
    const spline = fitSpline(fiveLandmarks.from, fiveLandmarks.to);
    const points = [[5, 10], [6.2, 9.1], fiveLandmarks.from[2]!] as readonly PlanePoint[];
    const run = pointRun(points);
    const areas = moveWithAreas(spline, run);
    points.forEach((point, index) => {
      const [xx, xy, yx, yy] = splineDerivatives(spline, point);
      expect(areas[index]).toBeCloseTo(xx * yy - xy * yx, 12);
      const [x, y] = applySpline(spline, point);
      expect(run.x[index]).toBeCloseTo(x, 12);
      expect(run.y[index]).toBeCloseTo(y, 12);
    });
  });

  test('spends an energy that turning and moving both shapes does not change', () => {
    const turn = ([x, y]: readonly [number, number]): PlanePoint => [
      0.6 * x - 0.8 * y + 4,
      0.8 * x + 0.6 * y,
    ];
    const plain = bendingEnergy(fitSpline(fiveLandmarks.from, fiveLandmarks.to));
    const turned = bendingEnergy(fitSpline(fiveLandmarks.from.map(turn), fiveLandmarks.to.map(turn)));
    expect(turned[0] + turned[1]).toBeCloseTo(plain[0] + plain[1], 11);
  });

  test('is refused for too few landmarks, for all on one line, and for two in one place', () => {
    const { from, to } = movedMiddle;
    expect(() => fitSpline(from.slice(0, 2), to.slice(0, 2))).toThrow('at least three landmarks, got 2');
    expect(() => fitSpline(from.slice(0, 3), to.slice(0, 4))).toThrow('got 4 for 3');
    const line = from.map(([x]): PlanePoint => [x, x / 3]);
    expect(() => fitSpline(line, to)).toThrow('not all on one line');
    expect(() => fitSpline([...from, from[1]!], [...to, to[1]!])).toThrow('landmarks 1 and 5 of a spline');
  });
});
