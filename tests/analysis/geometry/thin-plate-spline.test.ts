import { describe, expect, test } from 'vitest';
import {
  applySpline,
  applyWithArea,
  bendingEnergy,
  bendingEnergyMatrix,
  fitSpline,
  splineDerivatives,
  type PlanePoint,
} from '../../../analysis/geometry/index.ts';
import { diamond, fiveLandmarks, movedMiddle } from '../../reference/geometry-splines.ts';

describe('the diamond of Bookstein 1989', () => {
  const spline = fitSpline(diamond.from, diamond.to);

  test('has the known weights, an affine part that changes nothing, and the known energy', () => {
    spline.weights.forEach(([x, y], index) => {
      expect(x).toBeCloseTo(0, 12);
      expect(y).toBeCloseTo(diamond.weightY[index]!, 12);
    });
    const identity = [
      [0, 0],
      [1, 0],
      [0, 1],
    ];
    spline.affine.flat().forEach((part, index) => expect(part).toBeCloseTo(identity.flat()[index]!, 12));
    const energy = bendingEnergy(spline);
    expect(energy[0]).toBeCloseTo(diamond.energy[0], 12);
    expect(energy[1]).toBeCloseTo(diamond.energy[1], 12);
  });

  test('has the known bending energy matrix, whose quadratic form is the energy', () => {
    const matrix = bendingEnergyMatrix(diamond.from);
    matrix[0]!.forEach((entry, index) => expect(entry).toBeCloseTo(diamond.matrixRow[index]!, 12));
    const form = diamond.to.reduce(
      (sum, [, y], row) =>
        sum + diamond.to.reduce((part, [, other], column) => part + y * matrix[row]![column]! * other, 0),
      0,
    );
    expect(form).toBeCloseTo(diamond.energy[1], 12);
  });

  test('moves other points to the known places', () => {
    for (const { at, to } of diamond.warped) {
      const [x, y] = applySpline(spline, at);
      expect(x).toBeCloseTo(to[0], 12);
      expect(y).toBeCloseTo(to[1], 12);
    }
  });
});

describe('the five landmarks of Bookstein 1989', () => {
  const spline = fitSpline(fiveLandmarks.from, fiveLandmarks.to);

  test('have the printed weights and affine part', () => {
    spline.weights.forEach(([x, y], index) => {
      expect(x).toBeCloseTo(fiveLandmarks.printedWeightX[index]!, 4);
      expect(y).toBeCloseTo(fiveLandmarks.printedWeightY[index]!, 4);
    });
    spline.affine.forEach(([x, y], index) => {
      expect(x).toBeCloseTo(fiveLandmarks.printedAffineX[index]!, 4);
      expect(y).toBeCloseTo(fiveLandmarks.printedAffineY[index]!, 4);
    });
  });

  test('have the known energies, whose mean is the printed one', () => {
    const [x, y] = bendingEnergy(spline);
    expect(x).toBeCloseTo(fiveLandmarks.energy[0], 11);
    expect(y).toBeCloseTo(fiveLandmarks.energy[1], 11);
    expect((x + y) / 2).toBeCloseTo(fiveLandmarks.printedEnergy, 4);
  });

  test('move other points to the known places', () => {
    for (const { at, to } of fiveLandmarks.warped) {
      const [x, y] = applySpline(spline, at);
      expect(x).toBeCloseTo(to[0], 10);
      expect(y).toBeCloseTo(to[1], 10);
    }
  });
});

describe('a spline', () => {
  test('spends the known energy on a middle that moves', () => {
    const [x, y] = bendingEnergy(fitSpline(movedMiddle.from, movedMiddle.to));
    expect(x + y).toBeCloseTo(movedMiddle.energySum, 12);
  });

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
    for (const point of [[5, 10], [6.2, 9.1], fiveLandmarks.from[2]] as readonly PlanePoint[]) {
      const [xx, xy, yx, yy] = splineDerivatives(spline, point);
      const { place, area } = applyWithArea(spline, point);
      expect(area).toBeCloseTo(xx * yy - xy * yx, 12);
      applySpline(spline, point).forEach((part, axis) => expect(place[axis]).toBeCloseTo(part, 12));
    }
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
    expect(() => fitSpline([...from, from[1]], [...to, to[1]])).toThrow('landmarks 1 and 5 of a spline');
  });
});
