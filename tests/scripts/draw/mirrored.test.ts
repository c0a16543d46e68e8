import { expect, test } from 'vitest';
import { sideNames } from '../../../scripts/compile/resolve/side-names.ts';
import { compileChanged, replaced } from '../fixtures/changed-lineage.ts';

type Place = readonly [number, number];

/** An invented skull from above, its snout to the left: the animal's left lies below, where y grows. */
const seenFromAbove = new Map<string, Place>([
  ['snout-tip', [0, 0]],
  ['eye-front', [205, 0]],
  ['skull-rear', [600, 0]],
  ['tooth-front', [80, 0]],
  ['tooth-rear', [280, 0]],
  ['cheek-left', [300, 150]],
  ['cheek-right', [300, -150]],
  ['brow-left', [240, 60]],
  ['brow-right', [240, -60]],
]);

/** The same skull in a picture that was turned over: every place across its midline, every name still the animal's. */
const turnedOver = new Map([...seenFromAbove].map(([id, [x, y]]): [string, Place] => [id, [x, -y]]));

const paired = ['cheek', 'brow']
  .flatMap((id) => [
    `  - { id: ${id}-left, name: { en: ${id} }, views: [left], side: left, pair: ${id}-right }\n`,
    `  - { id: ${id}-right, name: { en: ${id} }, views: [left], side: right, pair: ${id}-left }\n`,
  ])
  .join('');

interface Recorded {
  readonly specimen: string;
  readonly places: ReadonlyMap<string, Place>;
  readonly mirrored?: true;
}

/** Compiles the small lineage with one animal digitised anew, by one specimen or several. */
async function compileRecorded(recorded: readonly Recorded[]) {
  const rows = recorded.flatMap(({ specimen, places }) =>
    [...places].map(([id, [x, y]]) => `${specimen},${id},${x},${y}\n`),
  );
  const source = (mirrored?: true) =>
    `  landmarks: { view: left, sheet: sheets/above.csv, mmPerUnit: 0.1${mirrored ? ', mirrored: true' : ''} }\n`;
  const { compiled, findings } = await compileChanged({
    'scheme.yaml': replaced('measurements:\n', `${paired}measurements:\n`),
    'sheets/above.csv': `specimen,landmark,x,y\n${rows.join('')}`,
    'sheets/landmarks.csv': (text) => text.replaceAll(/hm-3.*\n/g, ''),
    'specimens.yaml': (text) =>
      text.replace(/- id: hm-3\n[\s\S]*?(?=- id: hm-4)/, '') +
      recorded
        .map(
          ({ specimen, mirrored }) =>
            `- id: ${specimen}\n  taxon: saltula-brevis\n  institutionCode: HM\n  catalogNumber: "${specimen}"\n  horizon: upper-shelf\n${source(mirrored)}`,
        )
        .join(''),
  });
  if (!compiled) throw new Error(findings.map(({ message }) => message).join('\n'));
  return {
    findings,
    points: compiled.drawings.find(({ taxon }) => taxon === 'saltula-brevis')!.points,
    value: compiled.traits[0]!.values.find(({ taxon }) => taxon === 'saltula-brevis')!,
  };
}

const straight = await compileRecorded([{ specimen: 'hm-3', places: seenFromAbove }]);

test('the same animal from either side compiles to the same shape, with the sides of a turned picture swapped', async () => {
  const over = await compileRecorded([{ specimen: 'hm-3', places: turnedOver, mirrored: true }]);
  expect(over.points['cheek-left']!.at[1]).not.toBe(0);
  for (const [id, { at }] of Object.entries(straight.points))
    at.forEach((coordinate, axis) => expect(over.points[id]!.at[axis], id).toBeCloseTo(coordinate, 9));
});

test('a turned picture of another specimen leaves the mean of the animal where it was', async () => {
  const both = await compileRecorded([
    { specimen: 'hm-3', places: seenFromAbove },
    { specimen: 'hm-13', places: turnedOver, mirrored: true },
  ]);
  expect(both.points['brow-right']!.at[1]).toBeCloseTo(straight.points['brow-right']!.at[1], 9);
});

test('lengths are the same from either side, and the value says that it was mirrored', async () => {
  const over = await compileRecorded([{ specimen: 'hm-3', places: turnedOver, mirrored: true }]);
  expect(over.value.estimate).toBeCloseTo(straight.value.estimate!, 12);
  expect(over.value.facets).toContain('mirrored');
  expect(straight.value.facets).not.toContain('mirrored');
});

test('a skull with one side alone, turned over, has that side where the other lies in the rest', async () => {
  const leftAlone = new Map([...turnedOver].filter(([id]) => !id.endsWith('-right')));
  const { points } = await compileRecorded([{ specimen: 'hm-3', places: leftAlone, mirrored: true }]);
  expect(points['cheek-left']).toBeUndefined();
  expect(points['cheek-right']!.at[1]).toBeCloseTo(straight.points['cheek-right']!.at[1], 9);
});

test('a pair changes names only where the view shows both of its ends', () => {
  const landmark = (id: string, pair: string, views: string[]) =>
    [id, { id, pair, views, name: {} }] as const;
  const landmarks = new Map([landmark('near', 'far', ['side', 'above']), landmark('far', 'near', ['above'])]);
  const nameIn = (view: string, mirrored: boolean) =>
    sideNames({ source: { view, mirrored, sheet: 'sheets/a.csv' } }, { landmarks })('near');
  expect([nameIn('side', true), nameIn('above', true), nameIn('above', false)]).toEqual([
    'near',
    'far',
    'near',
  ]);
});
