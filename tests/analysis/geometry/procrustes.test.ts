import { describe, expect, test } from 'vitest';
import {
  booksteinCoordinates,
  generalSuperimposition,
  shapeDistance,
  superimpose,
  type PlanePoint,
} from '../../../analysis/geometry/index.ts';
import { planePoints } from '../../reference/plane-points.ts';
import gorillas from '../../reference/values/gorillas.json' with { type: 'json' };

const females = gorillas.gorillas.females.landmarks.map(planePoints);

function moved(points: readonly PlanePoint[], turnRad: number, scale: number): PlanePoint[] {
  const [cosine, sine] = [Math.cos(turnRad) * scale, Math.sin(turnRad) * scale];
  return points.map(([x, y]) => [x * cosine - y * sine + 7, x * sine + y * cosine - 3]);
}

describe('a superimposition', () => {
  const shape = Object.freeze(females[0]!);
  const other = Object.freeze(females[1]!);

  test('has a distance that place, turn and size do not change', () => {
    const { angleRad } = shapeDistance(shape, other);
    for (const turn of [0.3, Math.PI / 2, 3])
      expect(shapeDistance(shape, moved(other, turn, 2.5)).angleRad).toBeCloseTo(angleRad, 12);
  });

  test('has scales, one way and the other, whose product is the squared cosine of the angle', () => {
    const product = superimpose(shape, other).scale * superimpose(other, shape).scale;
    expect(product).toBeCloseTo(Math.cos(shapeDistance(shape, other).angleRad) ** 2, 12);
  });

  test('does not depend on the order of landmarks', () => {
    const reversed = shapeDistance([...shape].reverse(), [...other].reverse());
    expect(reversed.angleRad).toBeCloseTo(shapeDistance(shape, other).angleRad, 12);
  });

  test('refuses a mirror image unless told otherwise, and says that it would fit', () => {
    const mirror = shape.map(([x, y]): PlanePoint => [-x, y]);
    const refused = superimpose(mirror, shape);
    expect(refused.mirrored).toBe(false);
    expect(refused.fitsBetterMirrored).toBe(true);
    expect(refused.squares).toBeGreaterThan(1000);
    const allowed = superimpose(mirror, shape, { scaling: true, reflection: 'allow' });
    expect(allowed.mirrored).toBe(true);
    expect(allowed.squares).toBeCloseTo(0, 12);
  });

  test('is refused for fewer than three landmarks and for landmarks on one line', () => {
    const line: PlanePoint[] = [
      [0, 0],
      [1, 1 / 3],
      [3, 1],
    ];
    expect(() => superimpose(shape.slice(0, 2), other.slice(0, 2))).toThrow(
      'at least three landmarks, got 2',
    );
    expect(() => shapeDistance(line, shape.slice(0, 3))).toThrow('not all on one line');
    expect(() => superimpose(shape, other.slice(1))).toThrow('the same landmarks, got 8 and 7');
    expect(() => booksteinCoordinates([...line, line[0]!], [0, 3])).toThrow('lie apart');
    expect(() => generalSuperimposition([])).toThrow('at least one shape');
  });
});
