import sharp from 'sharp';
import { parse } from 'yaml';
import { describe, expect, test } from 'vitest';
import { markAbsent, putPlace, tapPlace, withNow } from '../../../components/measuring/bench-edits.ts';
import { freshBench, type Measured } from '../../../components/measuring/bench-record.ts';
import { benchSchemes, ownScheme } from '../../../components/measuring/bench-scheme.ts';
import { readingsOf } from '../../../components/measuring/readings.ts';
import { recordText, schemeText, sheetText } from '../../../components/measuring/sheet-text.ts';
import { turnOver } from '../../../components/measuring/turn-over.ts';
import { scheme as schemeSchema } from '../../../scripts/compile/schema/scheme.ts';
import { added, compileChanged } from '../../scripts/fixtures/changed-lineage.ts';

const ids = ['snout-tip', 'eye-front', 'skull-rear', 'tooth-front', 'tooth-rear'];
const landmark = (id: string) => ({ kind: 'landmark', landmark: id }) as const;

/** A specimen measured at the bench: a bar of 100 px for 10 mm, and points as given. */
function measured(specimen: string, rounds: Measured['rounds']): Measured {
  return {
    specimen,
    picture: { name: `${specimen}.png`, width: 900, height: 700 },
    scale: [
      [50.04, 600],
      [150.04, 600],
    ],
    scaleMm: 10,
    rounds,
    absent: [],
    breaks: {},
  };
}

const whole = measured('hm-20', [
  {
    'snout-tip': [100, 300],
    'eye-front': [310.2, 300],
    'skull-rear': [700, 300],
    'tooth-front': [200, 400],
    'tooth-rear': [400, 400],
  },
  {
    'snout-tip': [101, 300],
    'eye-front': [311.2, 300],
    'skull-rear': [700, 300],
    'tooth-front': [200, 400],
    'tooth-rear': [400, 400],
  },
]);

/** Compiles the small lineage with what the bench wrote, pasted under the rest of a specimen's record. */
async function compileWith(specimen: Measured) {
  const { width, height } = specimen.picture!;
  const blank = { create: { width, height, channels: 3 as const, background: '#222' } };
  const part = recordText([specimen], 'left', 'sheets/bench.csv');
  const record = `- id: ${specimen.specimen}\n  taxon: collina-media\n  horizon: gorse-clay\n  lifeStage: adult\n${part}`;
  return compileChanged({
    'specimens.yaml': added(record),
    'sheets/bench.csv': sheetText([specimen], ids),
    [`images/${specimen.picture!.name}`]: await sharp(blank).png().toBuffer(),
  });
}

describe('a sheet and a record from the bench', () => {
  test('are read back by the compiler with no finding against them', async () => {
    const { compiled, findings } = await compileWith(whole);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(findings.filter(({ file }) => file.includes('bench.csv'))).toEqual([]);
    const value = compiled!.specimens.find(({ id }) => id === 'hm-20')!.values[0]!;
    expect(value.readings).toBe(2);
  });

  test('of a picture that was turned over are read back as mirrored, with the same lengths', async () => {
    const turned = turnOver({ ...freshBench('hill-hoppers', 'left'), now: whole }).now;
    const { compiled, findings } = await compileWith(turned);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const specimen = compiled!.specimens.find(({ id }) => id === 'hm-20')!;
    expect(specimen.mirrored).toBe(true);
    const plain = (await compileWith(whole)).compiled!.specimens.find(({ id }) => id === 'hm-20')!;
    expect(specimen.values[0]!.value).toBeCloseTo(plain.values[0]!.value, 9);
  });

  test('give the value that the bench itself reads', async () => {
    const { compiled } = await compileWith(whole);
    const [scheme] = benchSchemes(compiled!, 'en');
    const readings = readingsOf(whole, [], scheme!);
    const own = readings.find(({ isTrait }) => isTrait)!;
    const theirs = compiled!.specimens
      .find(({ id }) => id === 'hm-20')!
      .values.find(({ trait }) => trait === own.id)!;
    expect(own.mean).toBeCloseTo(theirs.value, 9);
    expect(own.mean).toBeCloseTo((100 * (210.2 / 600 + 210.2 / 599)) / 2, 9);
    const part = readings.find(({ id }) => id === 'muzzle-length')!;
    expect(part.mean).toBeCloseTo(21.02, 9);
    expect(theirs.part!.mm).toBeCloseTo(part.mean!, 9);
  });

  test('say where a lost point breaks, and the compiler makes a limit of it', async () => {
    const { 'snout-tip': _tip, ...rest } = whole.rounds[0]!;
    const broken = {
      ...measured('hm-21', [rest]),
      absent: ['snout-tip'],
      breaks: {
        'snout-tip': [
          [140, 290],
          [150, 310],
        ] as const,
      },
    };
    const { compiled, findings } = await compileWith(broken);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const value = compiled!.traits[0]!.values.find(({ taxon }) => taxon === 'collina-media')!;
    expect(value.status).toBe('bounded');
    // (310.2 − 150) / (700 − 150), the weaker of the two break points
    expect(value.limits!.atLeast).toBeLessThanOrEqual((100 * 160.2) / 550);
    expect(value.limits!.working!.rows[0]!.value).toBeCloseTo((100 * 160.2) / 550, 9);
  });
});

test('the sheet has a row a round, empty cells for what is not there, and no row for an empty round', () => {
  const bench = markAbsent(withNow(freshBench('', 'left'), { specimen: 'hen-1' }), 'eye', true);
  const placed = putPlace(tapPlace(bench, landmark('nose'), [1, 2.25]), landmark('rear'), [30, 40]);
  const twice = { ...placed.now, rounds: [...placed.now.rounds, {}] };
  expect(sheetText([twice], ['nose', 'eye', 'rear'])).toBe(
    'specimen,repeat,nose.x,nose.y,eye.x,eye.y,rear.x,rear.y\nhen-1,1,1.0,2.3,,,30.0,40.0\n',
  );
});

test('names of the user’s own come with the part of the scheme that defines them', () => {
  const own = ownScheme(['Snout "tip"', 'Eye'], [{ from: 'snout-tip', to: 'eye' }]);
  const read = schemeSchema.parse(parse(schemeText(own, 'side')));
  expect(read.landmarks.map(({ id, name }) => [id, name['en']])).toEqual([
    ['snout-tip', 'Snout "tip"'],
    ['eye', 'Eye'],
  ]);
  expect(read.measurements).toMatchObject([{ id: 'snout-tip-to-eye', from: 'snout-tip', to: 'eye' }]);
});
