import { describe, expect, test } from 'vitest';
import { distanceBetween, ringArea, type PlanePoint } from '../../../analysis/geometry/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { dotPath, linePath } from '../../../components/figures/skull/compact-path.ts';
import { penStroke } from '../../../components/figures/skull/pen.ts';
import { ruleRing } from '../../../components/figures/skull/ruling.ts';
import { stippleDots } from '../../../components/figures/skull/stipple.ts';
import { surenessOf } from '../../../components/figures/skull/sureness.ts';
import { splitRuns } from '../../../components/figures/skull/trace-edges.ts';

/** Places of relative path data. */
function placesOf(d: string): PlanePoint[] {
  let [x, y] = [0, 0];
  return (d.match(/-?\d*\.?\d+/g) ?? []).map(Number).reduce<PlanePoint[]>((places, number, index, all) => {
    if (index % 2 === 0) return places;
    [x, y] = [x + all[index - 1]!, y + number];
    return [...places, [x, y]];
  }, []);
}

const circle = (radius: number, count = 360): PlanePoint[] =>
  Array.from({ length: count }, (_, step) => {
    const angle = (step * 2 * Math.PI) / count;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

describe('short path data', () => {
  test('leads along the line to within a tolerance that the eye does not see', () => {
    const line = circle(40);
    const places = placesOf(linePath(line));
    expect(places.length).toBeLessThan(line.length / 2);
    for (const place of places) expect(Math.abs(Math.hypot(...place) - 40)).toBeLessThan(0.01);
    expect(Math.abs(ringArea(places) / (Math.PI * 1600) - 1)).toBeLessThan(0.002);
  });

  test('is empty for fewer than two points, and refuses what is not a number', () => {
    expect(linePath([[1, 1]])).toBe('');
    expect(dotPath([])).toBe('');
    expect(() =>
      linePath([
        [NaN, 1],
        [0, 0],
      ]),
    ).toThrow('must be finite');
  });

  test('keeps every dot to a tenth, however many steps lead there', () => {
    const dots = circle(33.33, 100);
    const places = placesOf(dotPath(dots).replaceAll('h0', ' '));
    expect(places).toHaveLength(100);
    places.forEach((place, index) => expect(distanceBetween(place, dots[index]!)).toBeLessThan(0.0708));
  });
});

describe('ruling', () => {
  const lengthOf = (d: string) =>
    [...d.matchAll(/M(\S+) (\S+)L(\S+) ([^M]+)/g)]
      .map((match) => match.slice(1).map(Number))
      .reduce((sum, [ax, ay, bx, by]) => sum + Math.hypot(bx! - ax!, by! - ay!), 0);
  const everywhere = [circle(1000, 8)];
  const direction = { angleRad: 0.7, spacing: 0.5 };

  test('covers the area of a circle, as length times spacing', () => {
    const length = lengthOf(ruleRing(circle(20), everywhere, [], direction));
    expect(length * 0.5).toBeCloseTo(Math.PI * 400, -1);
  });

  test('leaves out what lies in front, and what is outside the region', () => {
    const ring = lengthOf(ruleRing(circle(20), everywhere, [circle(10)], direction));
    expect(ring * 0.5).toBeCloseTo(Math.PI * 300, -1);
    const inner = lengthOf(ruleRing(circle(20), [circle(10)], [], direction));
    expect(inner * 0.5).toBeCloseTo(Math.PI * 100, -1);
    expect(ruleRing(circle(20), [], [], direction)).toBe('');
  });
});

describe('a pen line', () => {
  const bar = (y: number): PlanePoint[] => Array.from({ length: 60 }, (_, step) => [step, y]);
  const inkOf = (line: readonly PlanePoint[], turn: 1 | -1, sureness = () => 1) =>
    Math.abs(ringArea(placesOf(penStroke(line, { width: 1, turn, swell: 1, sureness }))));

  test('is heavier on the side away from the light than towards it', () => {
    // A ring that runs clockwise as seen has its lower edge from right to left.
    const [upper, lower] = [inkOf(bar(0), 1), inkOf([...bar(20)].reverse(), 1)];
    expect(lower).toBeGreaterThan(1.5 * upper);
  });

  test('is the same ring however it runs, if told which way', () => {
    expect(inkOf([...bar(0)].reverse(), -1)).toBeCloseTo(inkOf(bar(0), 1), 1);
  });

  test('is thin where the course is not sure', () => {
    expect(inkOf(bar(0), 1, () => 0.5)).toBeCloseTo(inkOf(bar(0), 1) * 0.5, 0);
  });
});

describe('sureness', () => {
  test('is whole at a landmark that was found, and less away from it and at landmarks from relatives', () => {
    const sureness = surenessOf({
      landmarks: { a: { at: [0, 0], basis: 'digitised' }, b: { at: [50, 0], basis: 'relatives' } },
    });
    expect(sureness([0, 0])).toBe(1);
    expect(sureness([8, 0])).toBeLessThan(1);
    expect(sureness([50, 0])).toBeLessThan(sureness([8, 0]));
  });
});

describe('stipple', () => {
  const box = [0, 0, 60, 30] as const;
  const dots = (tone: (point: PlanePoint) => number) =>
    stippleDots(tone, box, seededRandom('dots')).flatMap(({ d }) => placesOf(d.replaceAll('h0', ' ')));

  test('has more dots the darker the tone, in proportion to it', () => {
    const count = (tone: number) => dots(() => tone).length;
    expect(count(0.8) / count(0.2)).toBeGreaterThan(3.2);
    expect(count(0.8) / count(0.2)).toBeLessThan(4.4);
  });

  test('keeps dots of full tone apart', () => {
    const places = dots(() => 1);
    const gaps = places.map((place, index) =>
      Math.min(...places.filter((_, other) => other !== index).map((other) => distanceBetween(place, other))),
    );
    // Nine tenths of two thirds of a unit, less the rounding to a tenth.
    expect(Math.min(...gaps)).toBeGreaterThan(0.45);
  });

  test('leaves bare paper bare', () => {
    expect(dots(() => 0)).toEqual([]);
    expect(dots(([x]) => (x < 30 ? 0.5 : 0)).every(([x]) => x <= 30.05)).toBe(true);
  });
});

describe('runs of a line', () => {
  test('share the point at which the answer changes', () => {
    const line: PlanePoint[] = [
      [0, 0],
      [1, 0],
      [2, 0],
      [3, 0],
    ];
    expect(splitRuns(line, ([x]) => x > 1)).toEqual([
      { answer: false, points: line.slice(0, 3) },
      { answer: true, points: line.slice(2) },
    ]);
    expect(splitRuns(line.slice(0, 1), () => true)).toEqual([]);
  });
});
