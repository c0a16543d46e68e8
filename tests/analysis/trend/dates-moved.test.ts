import { expect, test } from 'vitest';
import { datesMoved, fitSection, weighSection, type SectionLevel } from '../../../analysis/trend/index.ts';
import { levelsOf, referenceSections } from '../../reference/section-levels.ts';

const sections = Object.values(referenceSections).map(levelsOf);
const joint = { form: 'joint', pooled: true } as const;
const weightsOf = (levels: readonly SectionLevel[]) => {
  const models = fitSection(levels, joint);
  if (typeof models === 'string') throw new Error(models);
  return new Map(models.map(({ name, weight }) => [name, weight!]));
};

test.each(sections.map((levels, k) => [k, levels] as const))(
  'section %i: the fast fit has the weights of the full one, wherever its search begins',
  (_, levels) => {
    const full = weightsOf(levels);
    const starts = [undefined, 1e-9, 0.05, 40].map(
      (variance) =>
        variance && new Map([...full.keys()].map((name) => [name, variance] satisfies [typeof name, number])),
    );
    for (const near of starts) {
      const fast = weighSection(levels, joint, near || undefined);
      if (typeof fast === 'string') throw new Error(fast);
      for (const { name, weight } of fast) expect(weight).toBeCloseTo(full.get(name)!, 6);
    }
  },
);

test('one set of dates gives a range of no width, at the weights of those dates', () => {
  for (const levels of sections) {
    const full = weightsOf(levels);
    const elapsed = levels.map(({ elapsedMyr }) => elapsedMyr);
    const moved = datesMoved({ levels, draws: 1, leastWeight: 0.9, elapsedOfDraw: () => elapsed })!;
    expect(moved.sets).toBe(1);
    for (const { name, least, greatest, leads, named } of moved.weights) {
      expect(least).toBe(greatest);
      expect(least).toBeCloseTo(full.get(name)!, 6);
      expect(leads).toBe(Number(full.get(name) === Math.max(...full.values())));
      expect(named).toBe(Number(full.get(name)! >= 0.9));
    }
  }
});

test('dates that stretch all of time alike change no weight', () => {
  for (const levels of sections) {
    const full = weightsOf(levels);
    const moved = datesMoved({
      levels,
      draws: 5,
      leastWeight: 0.9,
      elapsedOfDraw: (draw) => levels.map(({ elapsedMyr }) => elapsedMyr * (0.3 + draw)),
    })!;
    for (const { name, least, greatest } of moved.weights) {
      expect(least).toBeCloseTo(full.get(name)!, 5);
      expect(greatest).toBeCloseTo(full.get(name)!, 5);
    }
  }
});

test('the range holds the weights of every set of dates, and of one set exactly one model leads', () => {
  const levels = sections[0]!;
  const at = (draw: number) =>
    levels.map(({ elapsedMyr }, k) => elapsedMyr + 0.02 * Math.sin(k * (draw + 1)));
  const moved = datesMoved({ levels, draws: 8, leastWeight: 0.9, elapsedOfDraw: at })!;
  for (let draw = 0; draw < 8; draw++) {
    const own = weightsOf(levels.map((level, k) => ({ ...level, elapsedMyr: at(draw)[k]! })));
    for (const { name, least, greatest } of moved.weights) {
      expect(own.get(name)!).toBeGreaterThanOrEqual(least - 1e-5);
      expect(own.get(name)!).toBeLessThanOrEqual(greatest + 1e-5);
    }
  }
  expect(moved.weights.reduce((sum, { leads }) => sum + leads, 0)).toBe(8);
});

test('a set in which two levels have one age is passed over, and none at all is answered', () => {
  const levels = sections[0]!;
  const elapsed = levels.map(({ elapsedMyr }) => elapsedMyr);
  const question = { levels, draws: 4, leastWeight: 0.9 };
  const even = datesMoved({
    ...question,
    elapsedOfDraw: (draw) => (draw % 2 === 0 ? elapsed : elapsed.map(() => 1)),
  });
  expect(even!.sets).toBe(2);
  expect(datesMoved({ ...question, elapsedOfDraw: () => elapsed.map(() => 1) })).toBeUndefined();
  expect(datesMoved({ ...question, draws: 0, elapsedOfDraw: () => elapsed })).toBeUndefined();
});
