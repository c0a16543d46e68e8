import { describe, expect, it } from 'vitest';
import { added, compileChanged, replaced, type Change } from './fixtures/changed-lineage.ts';

async function valueOf(taxon: string, changes: Record<string, Change>) {
  const { compiled, findings } = await compileChanged(changes);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return compiled!.traits[0]!.values.find((value) => value.taxon === taxon)!;
}

const specimens = 'specimens.yaml';
const second = 'catalogNumber: "2"\n';

describe('who counts', () => {
  it('a juvenile stays out, and counts when it is admitted with a reason', async () => {
    expect(await valueOf('collina-vivens', {})).toMatchObject({
      n: 1,
      leftOut: [{ specimen: 'hm-7', reason: 'young' }],
    });
    const admitted = {
      [specimens]: replaced(
        'lifeStage: juvenile',
        'lifeStage: juvenile\n  admitted: { en: its skull is grown }',
      ),
    };
    expect(await valueOf('collina-vivens', admitted)).toMatchObject({ n: 2, leftOut: [] });
  });

  it.each([
    ['association: composite', 'composite'],
    ['association: lot', 'lot'],
    ['pathology: { en: healed break }', 'sick'],
    ['identification: { qualifier: cf. }', 'doubtful'],
    ['preparations: model', 'model'],
    ['leftOut: { en: the label is lost }', 'author'],
  ])('a specimen with %s stays out as %s', async (field, reason) => {
    const value = await valueOf('saltula-prima', { [specimens]: replaced(second, `${second}  ${field}\n`) });
    expect(value).toMatchObject({ n: 1, specimens: ['hm-1'], leftOut: [{ specimen: 'hm-2', reason }] });
  });

  it('a cast and its original are one animal', async () => {
    const cast =
      '- { id: hm-10, taxon: saltula-prima, horizon: lower-shelf, preparations: "cast of: hm-1" }\n';
    const changes = { [specimens]: added(cast), 'sheets/callipers.csv': added('hm-10,20.2,60.1\n') };
    expect(await valueOf('saltula-prima', changes)).toMatchObject({
      n: 2,
      leftOut: [{ specimen: 'hm-10', reason: 'same-animal' }],
    });
  });

  it('a cast counts where its original yields nothing, and says that it is one', async () => {
    const cast =
      '- { id: hm-10, taxon: collina-media, horizon: gorse-clay, preparations: "cast of: hm-8" }\n';
    const value = await valueOf('collina-media', {
      [specimens]: added(cast),
      'sheets/callipers.csv': added('hm-10,28.2,72.1\n'),
    });
    expect(value).toMatchObject({
      status: 'measured',
      n: 1,
      specimens: ['hm-10'],
      facets: ['fossil', 'cast'],
    });
  });

  it('an approximate value weighs less, tells nothing of the spread and is said to be one', async () => {
    const changes = {
      [specimens]: replaced(
        'skull-length: { value: 61, unit: mm }',
        'skull-length: { value: 61, unit: mm, approximate: 6 }',
      ),
    };
    const { compiled, findings } = await compileChanged(changes);
    expect(findings.map(({ code }) => code)).toContain('spread-missing');
    const value = compiled!.traits[0]!.values[0]!;
    const exact = (100 * 20.2) / 60.1;
    const about = (100 * 21.1) / 61;
    expect(value.facets).toContain('approximate');
    expect(Math.abs(value.estimate! - exact)).toBeLessThan(Math.abs(value.estimate! - about));
  });

  it('of two authors’ records the preferred one is used', async () => {
    const records =
      '[{ value: 61, unit: mm }, { value: 62, unit: mm, source: hopper-notes, preferred: true }]';
    const { compiled } = await compileChanged({ [specimens]: replaced('{ value: 61, unit: mm }', records) });
    const specimen = compiled!.specimens.find(({ id }) => id === 'hm-2')!;
    expect(specimen.values[0]!.whole).toEqual({ measurement: 'skull-length', mm: 62 });
  });

  it('two sexes with three or more each give their spread apart, and the pooled variance is that of one-way analysis', async () => {
    const shares = { female: [30, 31, 32], male: [40, 41, 42] };
    const rows = Object.entries(shares).flatMap(([sex, values]) =>
      values.map((value, index) => ({ id: `${sex}-${index}`, sex, value })),
    );
    const records = rows
      .map(({ id, sex }) => `- { id: ${id}, taxon: collina-media, horizon: gorse-clay, sex: ${sex} }\n`)
      .join('');
    const changes = {
      [specimens]: (text: string) => text.replace(/- id: hm-2[\s\S]*?(?=- id: hm-3)/, '') + records,
      'sheets/callipers.csv': added(rows.map(({ id, value }) => `${id},${value},100\n`).join('')),
    };
    const { compiled } = await compileChanged(changes);
    // Within each sex the squares about the mean are 1 + 0 + 1 on 2 degrees of freedom.
    expect(compiled!.traits[0]!.pooled).toEqual({ variance: 1, df: 4 });
  });
});
