import { describe, expect, it } from 'vitest';
import { added, compileChanged, replaced, type Change } from './fixtures/changed-lineage.ts';

const sheet = 'sheets/callipers.csv';
const lostSnout = replaced(
  'taxon: collina-media\n',
  'taxon: collina-media\n  lost: [{ landmark: snout-tip }]\n',
);

async function media(changes: Record<string, Change>) {
  const { compiled, findings } = await compileChanged(changes);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  const value = compiled!.traits[0]!.values.find(({ taxon }) => taxon === 'collina-media')!;
  return { value, specimen: compiled!.specimens.find(({ id }) => id === 'hm-8')! };
}

const inRecord = {
  'specimens.yaml': (text: string) =>
    lostSnout(text).replace(
      '  lost: [{ landmark: snout-tip }]\n',
      '  lost: [{ landmark: snout-tip }]\n  measurements:\n    muzzle-length: { value: 28.1, unit: mm, toBreak: snout-tip }\n    skull-length: { value: 72.2, unit: mm, toBreak: snout-tip }\n',
    ),
};

describe('a table of callipers', () => {
  it('says by a column that a length was taken to the break, as a record does', async () => {
    const own = `specimen,muzzle-length (mm),muzzle-length.toBreak,skull-length (mm),skull-length.toBreak\nhm-8,28.1,snout-tip,72.2,snout-tip\n`;
    const byTable = await media({ 'specimens.yaml': lostSnout, 'sheets/broken.csv': own });
    const byRecord = await media(inRecord);
    expect(byTable.value.status).toBe('bounded');
    expect(byTable.value.limits!.atLeast).toBe(byRecord.value.limits!.atLeast);
  });

  it('keeps lengths to a break apart from whole ones of the same specimen', async () => {
    const own = `specimen,skull-length (mm),skull-length.toBreak\nhm-8,72.2,snout-tip\nhm-8,72.4,snout-tip\n`;
    const table = `specimen,muzzle-length (mm),muzzle-length.toBreak\nhm-8,28.1,snout-tip\nhm-8,28.3,snout-tip\n`;
    const { value } = await media({
      'specimens.yaml': lostSnout,
      'sheets/one.csv': own,
      'sheets/two.csv': table,
    });
    expect(value.status).toBe('bounded');
  });

  it('says by a column that a value is only about right, in the unit of its column or in its own', async () => {
    const about = (header: string, plusMinus: string) =>
      media({
        [sheet]: added(''),
        'sheets/about.csv': `specimen,muzzle-length (cm),skull-length (cm),${header}\nhm-8,2.81,7.22,${plusMinus}\n`,
      });
    const [own, other] = [
      await about('skull-length.approximate', '0.4'),
      await about('skull-length.approximate (mm)', '4'),
    ];
    expect(own.value.facets).toContain('approximate');
    expect(own.value.interval).toEqual(other.value.interval);
    const exact = await media({
      'sheets/about.csv': 'specimen,muzzle-length (cm),skull-length (cm)\nhm-8,2.81,7.22\n',
    });
    expect(exact.value.facets).not.toContain('approximate');
    const width = ([low, high]: readonly (number | null)[]) => high! - low!;
    expect(width(own.value.interval!)).toBeGreaterThan(width(exact.value.interval!));
  });

  it('of a museum says the same by its mapping', async () => {
    const mapping =
      'sheets:\n  - file: sheets/museum.csv\n    columns:\n      No: catalogNumber\n      ML: { measurement: muzzle-length, unit: mm }\n      SL: { measurement: skull-length, unit: mm }\n      Broken at: { toBreak: muzzle-length }\n      SL broken at: { toBreak: skull-length }\n      SL error: { approximate: skull-length, unit: cm }\n';
    const { value } = await media({
      'scheme.yaml': added(mapping),
      'specimens.yaml': lostSnout,
      'sheets/museum.csv': 'No,ML,SL,Broken at,SL broken at,SL error\n8,28.1,72.2,snout-tip,snout-tip,0.1\n',
    });
    expect(value.status).toBe('bounded');
    const exact = await media(inRecord);
    expect(value.limits!.atLeast!).toBeLessThan(exact.value.limits!.atLeast!);
  });
});
