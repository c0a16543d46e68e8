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
  /** Landmarks that a drawing by hand marks where they were digitised, at a tenth of the size. */
  readonly drawn?: readonly string[];
}

/** A drawing by hand with its marks. */
function drawingOf({ places, drawn = [] }: Recorded): string {
  const marks = drawn.map((id) => {
    const [x, y] = places.get(id)!;
    return `<circle id="${id}" cx="${x / 10}" cy="${y / 10}"/>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg"><g id="bone"><path d="M0 0L60 0"/></g><g id="landmarks">${marks.join('')}</g></svg>`;
}

/** Compiles the small lineage with one animal digitised anew, by one specimen or several. */
async function compileRecorded(recorded: readonly Recorded[]) {
  const rows = recorded.flatMap(({ specimen, places }) =>
    [...places].map(([id, [x, y]]) => `${specimen},${id},${x},${y}\n`),
  );
  const source = (mirrored?: true) =>
    `  landmarks: { view: left, sheet: sheets/above.csv, mmPerUnit: 0.1${mirrored ? ', mirrored: true' : ''} }\n`;
  const drawingRecord = (specimen: string) =>
    `  drawing: { file: drawings/${specimen}.svg, by: Bo Heath, rights: { image: Bo Heath, licence: CC0-1.0 } }\n`;
  const { compiled, findings } = await compileChanged({
    'scheme.yaml': replaced('measurements:\n', `${paired}measurements:\n`),
    'sheets/above.csv': `specimen,landmark,x,y\n${rows.join('')}`,
    ...Object.fromEntries(
      recorded.filter(({ drawn }) => drawn).map((each) => [`drawings/${each.specimen}.svg`, drawingOf(each)]),
    ),
    'sheets/landmarks.csv': (text) => text.replaceAll(/hm-3.*\n/g, ''),
    'specimens.yaml': (text) =>
      text.replace(/- id: hm-3\n[\s\S]*?(?=- id: hm-4)/, '') +
      recorded
        .map(
          ({ specimen, mirrored, drawn }) =>
            `- id: ${specimen}\n  taxon: saltula-brevis\n  institutionCode: HM\n  catalogNumber: "${specimen}"\n  horizon: upper-shelf\n${source(mirrored)}${drawn ? drawingRecord(specimen) : ''}`,
        )
        .join(''),
  });
  if (!compiled) throw new Error(findings.map(({ message }) => message).join('\n'));
  const drawing = compiled.drawings.find(({ taxon }) => taxon === 'saltula-brevis')!;
  return {
    findings,
    drawing,
    points: drawing.points,
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

test('a drawing of a turned picture lies where its animal lies, its sides named as on the animal', async () => {
  const drawn = ['snout-tip', 'cheek-left', 'cheek-right', 'brow-left', 'brow-right'];
  const { drawing, findings } = await compileRecorded([
    { specimen: 'hm-3', places: turnedOver, mirrored: true, drawn },
  ]);
  expect(findings.filter(({ code }) => code.startsWith('drawing'))).toEqual([]);
  const [a, b, c, d, e, f] = drawing.own!.place;
  for (const [id, seenAs] of [
    ['snout-tip', 'snout-tip'],
    ['cheek-left', 'cheek-right'],
    ['brow-right', 'brow-left'],
  ] as const) {
    const [x, y] = turnedOver.get(id)!.map((coordinate) => coordinate / 10) as [number, number];
    const [wantedX, wantedY] = drawing.points[seenAs]!.at;
    expect(a * x + c * y + e).toBeCloseTo(wantedX, 6);
    expect(b * x + d * y + f).toBeCloseTo(wantedY, 6);
  }
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
