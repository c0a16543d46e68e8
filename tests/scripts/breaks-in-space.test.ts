import { describe, expect, it } from 'vitest';
import { added, compileChanged, findingsAfter, type Change } from './fixtures/changed-lineage.ts';

type Place = readonly [number, number, number];

const skull: Readonly<Record<string, Place>> = {
  'eye-front': [100, 0, 0],
  'skull-rear': [300, 120, 0],
  'tooth-front': [120, 40, 0],
  'tooth-rear': [200, 40, 0],
};
const line: readonly Place[] = [
  [40, 0, 0],
  [20, 5, 0],
];

/** A turn about two axes: lengths in space do not notice it. */
const turned = ([x, y, z]: Place): Place => {
  const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
  return [c * x - s * z, y * c + s * (s * x + c * z), -s * y + c * (s * x + c * z)];
};
const flat = ([x, y]: Place) => [x, y];
const write = (place: readonly number[]) => place.map((value) => value.toFixed(9)).join(',');

function broken(
  dimensions: 2 | 3,
  place: (at: Place) => readonly number[],
  more = '',
): Record<string, Change> {
  const view = dimensions === 3 ? 'scan' : 'left';
  const rows = Object.entries(skull).map(([id, at]) => `hm-10,${id},${write(place(at))}\n`);
  const points = line.map((at) => `[${write(place(at))}]`).join(', ');
  return {
    'scheme.yaml': (text) =>
      text
        .replace('- { id: left }', '- { id: left }\n  - { id: scan, dimensions: 3 }')
        .replaceAll('views: [left]', 'views: [left, scan]'),
    'specimens.yaml': added(
      `- id: hm-10\n  taxon: collina-media\n  horizon: gorse-clay\n  lost: [{ landmark: snout-tip, break: [${points}]${more} }]\n  landmarks: { view: ${view}, sheet: sheets/broken.csv, mmPerUnit: 1 }\n`,
    ),
    'sheets/broken.csv': `specimen,landmark,x,y${dimensions === 3 ? ',z' : ''}\n${rows.join('')}`,
  };
}

async function limitOf(changes: Record<string, Change>) {
  const { compiled, findings } = await compileChanged(changes);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return compiled!.traits[0]!.values.find(({ taxon }) => taxon === 'collina-media')!.limits!;
}

describe('a break digitised in a scan', () => {
  it('at several points limits as the same break in a picture does, however the scan is turned', async () => {
    const picture = await limitOf(broken(2, flat));
    const scan = await limitOf(broken(3, turned));
    // The weakest point: 60 of 260 mm along the tooth row are left.
    expect(scan.working!.rows[0]!.value).toBeCloseTo((100 * 60) / 260, 6);
    expect(scan.atLeast).toBeCloseTo(picture.atLeast!, 6);
  });

  it('gives a weaker limit where its axis may be off, as far as the worst direction of the cone', async () => {
    const scan = await limitOf(broken(3, turned, ', axisWithin: 6'));
    const exact = await limitOf(broken(3, turned));
    expect(scan.atLeast!).toBeLessThan(exact.atLeast!);
  });

  it('of points that are flat is a mistake, told at the point', async () => {
    const changes = broken(3, turned);
    const points = line.map((at) => `[${write(turned(at))}]`).join(', ');
    const specimens = changes['specimens.yaml'] as (text: string) => string;
    expect(
      await findingsAfter({
        ...changes,
        'specimens.yaml': (text) => specimens(text).replace(points, '[40, 0]'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:62:41-48 error sheet-shape
        a point of the break of "snout-tip" has x and y, and hm-10 has landmarks in three dimensions alone
        give the point as many coordinates as the landmarks of its view have"
    `);
  });
});
