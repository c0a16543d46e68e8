import { expect, test } from 'vitest';
import {
  ageQuantileMa,
  ageSigmaMa,
  drawAges,
  findLastOccurrenceLimit,
  findRangeExtension,
  interpolateAge,
  intervalBetween,
  orderOfBeds,
  probabilityOlder,
  probabilityYounger,
  weightedMean,
  type HorizonAge,
} from '../../../analysis/ages/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import reference from '../../reference/values/ages.json' with { type: 'json' };

const uniform = (fromMa: number, toMa: number): HorizonAge => ({ kind: 'uniform', fromMa, toMa });
const { weighted, overdispersed, interpolation } = reference.ages;
const datesOf = ({ x, sigma }: typeof weighted) => x.map((ageMa, k) => ({ ageMa, sigmaMa: sigma[k]! }));
const normal = (meanMa: number, sigmaMa: number): HorizonAge => ({ kind: 'normal', meanMa, sigmaMa });

test('errors of the ends widen a stage by a third of their squares, and its limits a little', () => {
  const ends = { fromMa: 83.6, toMa: 72.2, fromSigmaMa: 0.1, toSigmaMa: 0.1 };
  const age: HorizonAge = { kind: 'uniform', ...ends };
  expect(ageSigmaMa(age) ** 2).toBeCloseTo(11.4 ** 2 / 12 + 0.02 / 3, 12);
  const median = ageQuantileMa(age, 0.5);
  expect(median).toBeCloseTo(77.9, 9);
  expect(probabilityYounger(age, ageQuantileMa(age, 0.975))).toBeCloseTo(0.975, 12);
  expect(ageQuantileMa(age, 0.999)).toBeGreaterThan(ageQuantileMa(uniform(83.6, 72.2), 0.999));
});

test('dates that agree keep their stated error, and dates that scatter too much get a wider one', () => {
  const [agreed, scattered] = [weightedMean(datesOf(weighted)), weightedMean(datesOf(overdispersed))];
  expect(agreed).toMatchObject({ scattersTooMuch: false, sigmaMa: agreed.internalSigmaMa });
  expect(scattered.scattersTooMuch).toBe(true);
  expect(scattered.sigmaMa).toBeCloseTo(overdispersed.sigmaExternal, 12);
});

test('one date has no scatter, and no date or error of 0 is refused', () => {
  expect(weightedMean([{ ageMa: 5, sigmaMa: 0.1 }])).toMatchObject({ meanMa: 5, sigmaMa: 0.1, mswd: NaN });
  expect(() => weightedMean([])).toThrow('a weighted mean needs at least one date');
  expect(() => weightedMean([{ ageMa: 5, sigmaMa: 0 }])).toThrow('error of a date must be above 0 Ma, got 0');
});

test('a level between dated tuffs is interpolated with its error, and none outside them', () => {
  const { tuffHeights, tuffAges, tuffSigma, fossilHeight } = interpolation;
  const beds = tuffHeights.map((heightM, k) => ({ heightM, ageMa: tuffAges[k]!, sigmaMa: tuffSigma[k]! }));
  // beds may come in any order
  expect(interpolateAge(beds.toReversed(), fossilHeight)!.ageMa).toBe(
    interpolateAge(beds, fossilHeight)!.ageMa,
  );
  expect(interpolateAge(beds, 42)!.sigmaMa).toBeCloseTo(0.06, 14);
  expect(interpolateAge(beds, 42.1)).toBeUndefined();
  expect(interpolateAge(beds, -0.1)).toBeUndefined();
  expect(interpolateAge([], 1)).toBeUndefined();
  expect(interpolateAge([beds[0]!], 0)).toMatchObject({ ageMa: 75.4 });
  expect(() => interpolateAge([beds[0]!, beds[0]!], 0)).toThrow('two dated beds at 0 m');
  expect(() => interpolateAge([beds[0]!, { heightM: 9, ageMa: 80, sigmaMa: 1 }], 0)).toThrow(
    'the bed at 9 m is dated older than the one at 0 m below it',
  );
});

test('time between two levels has no error from a date that both rest on alike', () => {
  const beds = [
    { heightM: 0, ageMa: 20, sigmaMa: 0.3 },
    { heightM: 10, ageMa: 18, sigmaMa: 0.4 },
  ];
  const [low, middle, top] = [0, 5, 10].map((heightM) => interpolateAge(beds, heightM)!);
  expect(low!.shares).toEqual([1, 0]);
  expect(middle!.shares).toEqual([0.5, 0.5]);
  // the difference of two independent dates; half of it for half of the section
  expect(intervalBetween(beds, low!, top!).sigmaMyr).toBeCloseTo(0.5, 14);
  expect(intervalBetween(beds, low!, middle!)).toEqual({ myr: 1, sigmaMyr: expect.closeTo(0.25, 14) });
  expect(intervalBetween(beds, middle!, middle!)).toEqual({ myr: 0, sigmaMyr: 0 });
});

test.each([
  [uniform(10, 5), uniform(8, 2)],
  [uniform(8, 2), uniform(5, 4)],
  [uniform(10, 5), normal(7, 1.5)],
  [normal(7, 1.5), uniform(8, 2)],
  [normal(7, 1.5), normal(6, 0.5)],
  [uniform(9, 8), uniform(3, 2)],
  [uniform(6, 6), uniform(8, 2)],
])('the probability that one bed is the older is that of counting draws: %j, %j', (one, other) => {
  const random = seededRandom('order');
  let older = 0;
  const draws = 200_000;
  for (let k = 0; k < draws; k++)
    older += Number(
      ageQuantileMa(one, 1e-12 + random() * (1 - 2e-12)) >
        ageQuantileMa(other, 1e-12 + random() * (1 - 2e-12)),
    );
  // four standard errors of a count of so many draws
  expect(Math.abs(probabilityOlder(one, other) - older / draws)).toBeLessThan(4 * Math.sqrt(0.25 / draws));
  expect(probabilityOlder(one, other) + probabilityOlder(other, one)).toBeCloseTo(1, 12);
});

test('superposition overrules ages, and a bed is no older than itself', () => {
  const below = new Map([
    ['top', ['middle']],
    ['middle', ['bottom']],
  ]);
  const bed = (id: string) => ({ id, age: uniform(10, 5) });
  expect(orderOfBeds(bed('top'), bed('bottom'), below)).toEqual({ known: 'younger' });
  expect(orderOfBeds(bed('bottom'), bed('top'), below)).toEqual({ known: 'older' });
  expect(orderOfBeds(bed('top'), bed('top'), below)).toEqual({ known: 'same-bed' });
  expect(orderOfBeds(bed('top'), bed('elsewhere'), below)).toEqual({ known: 'no', probabilityOlder: 0.5 });
  expect(probabilityOlder(normal(5, 0), normal(5, 0))).toBe(0.5);
});

test('a last find has a limit, unless it is the only one', () => {
  expect(findLastOccurrenceLimit({ firstMa: 83.2, lastMa: 71.5, horizons: 1 }, 0.95)).toBeUndefined();
  expect(findLastOccurrenceLimit({ firstMa: 9, lastMa: 1, horizons: 3 }, 0.95)!.youngestMa).toBe(0);
  expect(() => findRangeExtension(5, 1)).toThrow('confidence must lie inside 0 to 1, got 1');
});

test('the limit on a last find holds in 95% of ranges filled at random', () => {
  const random = seededRandom('ranges');
  let held = 0;
  const ranges = 4000;
  for (let k = 0; k < ranges; k++) {
    const finds = Array.from({ length: 9 }, () => 50 + 10 * random());
    const [firstMa, lastMa] = [Math.max(...finds), Math.min(...finds)];
    held += Number(findLastOccurrenceLimit({ firstMa, lastMa, horizons: 9 }, 0.95)!.youngestMa <= 50);
  }
  // 99.9% binomial band of 4000
  expect(held / ranges).toBeGreaterThan(0.938);
  expect(held / ranges).toBeLessThan(0.962);
});

const beds = new Map([
  ['a', uniform(10, 5)],
  ['b', uniform(11, 6)],
  ['c', normal(9, 0.5)],
]);

test('drawn ages obey superposition and depend on nothing but seed, bed and draw', () => {
  const below = new Map([['a', ['b']]]);
  for (let draw = 0; draw < 200; draw++) {
    const ages = drawAges({ beds, below }, 1, draw);
    expect(ages.get('a')!).toBeLessThanOrEqual(ages.get('b')!);
    const more = drawAges({ beds: new Map([['new', uniform(3, 2)], ...beds]), below }, 1, draw);
    for (const [bed, ageMa] of ages) expect(more.get(bed)).toBe(ageMa);
  }
  expect(drawAges({ beds, below }, 1, 0).get('c')).not.toBe(drawAges({ beds, below }, 2, 0).get('c'));
});

test('drawn ages have the mean and the spread of the age', () => {
  const draws = Array.from({ length: 4000 }, (_, draw) =>
    drawAges({ beds, below: new Map() }, 'moments', draw).get('a')!,
  );
  const mean = draws.reduce((sum, ageMa) => sum + ageMa, 0) / draws.length;
  const variance = draws.reduce((sum, ageMa) => sum + (ageMa - mean) ** 2, 0) / draws.length;
  expect(Math.abs(mean - 7.5)).toBeLessThan(4 * Math.sqrt(25 / 12 / draws.length));
  expect(Math.sqrt(variance)).toBeCloseTo(5 / Math.sqrt(12), 1);
});

test('beds whose ages hardly allow their order are drawn from the top down, and impossible ones are named', () => {
  const pair = (top: HorizonAge, low: HorizonAge) => ({
    beds: new Map([
      ['top', top],
      ['low', low],
    ]),
    below: new Map([['top', ['low']]]),
  });
  const ages = drawAges(pair(uniform(10, 4.9999), uniform(5, 0)), 1, 3);
  expect(ages.get('low')!).toBeGreaterThanOrEqual(ages.get('top')!);
  expect(() => drawAges(pair(uniform(10, 8), uniform(5, 4)), 1, 0)).toThrow(
    '"top" cannot be as young as "low" below it',
  );
  const ring = new Map([
    ['a', ['b']],
    ['b', ['a']],
  ]);
  expect(() => drawAges({ beds, below: ring }, 1, 0)).toThrow('"a" lies above itself');
});
