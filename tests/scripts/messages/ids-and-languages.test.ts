import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about ids and languages', () => {
  it('a taxon is misspelt', async () => {
    expect(
      await findingsAfter({ 'specimens.yaml': replaced('taxon: saltula-brevis', 'taxon: saltula-brevvis') }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:20:10-25 error unknown-id
        unknown taxon: "saltula-brevvis"; did you mean "saltula-brevis"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('a horizon is misspelt', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('horizon: upper-shelf', 'horizon: uper-shelf') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:23:12-22 error unknown-id
        unknown horizon: "uper-shelf"; did you mean "upper-shelf"?
        name one of horizons.yaml, or add it there"
    `);
  });

  it('a landmark is misspelt in the scheme', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced('from: snout-tip, to: eye-front', 'from: snout-tip, to: eye-frnt'),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:13:47-55 error unknown-id
        unknown landmark: "eye-frnt"; did you mean "eye-front"?
        name one of scheme.yaml, or add it there"
    `);
  });

  it('a landmark is misspelt in a sheet', async () => {
    expect(await findingsAfter({ 'sheets/landmarks.csv': replaced('eye-front.x', 'eye-frunt.x') }))
      .toMatchInlineSnapshot(`
      "sheets/landmarks.csv:1:41-52 error unknown-id
        unknown landmark: "eye-frunt"; did you mean "eye-front"?
        name a landmark of scheme.yaml, or define it there"
    `);
  });

  it('a specimen is misspelt in a sheet', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5', 'hm-55') })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:1-6 error unknown-id
        unknown specimen: "hm-55"; did you mean "hm-5"?
        name one of specimens.yaml, or add it there"
    `);
  });

  it('a measurement is misspelt in a specimen', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('muzzle-length: { repeats', 'muzle-length: { repeats'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:9:5-17 error unknown-id
        unknown measurement: "muzle-length"; did you mean "muzzle-length"?
        name one of scheme.yaml, or add it there"
    `);
  });

  it('a trait is misspelt', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('focus: muzzle-share', 'focus: muzle-share') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:6:8-19 error unknown-id
        unknown trait: "muzle-share"; did you mean "muzzle-share"?
        name one of traits.yaml, or add it there"
    `);
  });

  it('a stage is misspelt', async () => {
    expect(await findingsAfter({ 'horizons.yaml': replaced('stage: Langhian', 'stage: Langian') }))
      .toMatchInlineSnapshot(`
        "horizons.yaml:4:58-65 error unknown-stage
          unknown stage: "Langian"; did you mean "Langhian"?
          use a name of the International Chronostratigraphic Chart; for a regional age or zone give { from: …, to: … } with its source"
      `);
  });

  it('a reference is misspelt', async () => {
    expect(
      await findingsAfter({ 'horizons.yaml': replaced('sources: [hopper-notes]', 'sources: [hoper-notes]') }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:81-92 error unknown-reference
        unknown reference: "hoper-notes"; did you mean "hopper-notes"?
        name one of references.bib, or add it there"
    `);
  });

  it('a language is misspelt', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('{ en: hill-hopper }', '{ em: hill-hopper }') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:7:89-91 error unknown-language
        "em" is no language of this lineage; did you mean "en"?
        add it to languages in lineage.yaml, or remove the text"
    `);
  });

  it('a translation is on its way: told once, whatever is in it', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced('{ en: hill-hopper }', '{ en: hill-hopper, es: saltador }'),
        'lineage.yaml': replaced('{ en: Hill-hoppers }', '{ en: Hill-hoppers, es: Saltadores }'),
        'story.es.mdx': 'Un saltador.\n',
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:5:12-16 warning language-unlisted
        there are texts in "es", and the lineage is in "en" only
        add es to languages when every text has it; until then none of them is shown"
    `);
  });

  it('a record that failed still counts as declared', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('role: outgroup }', 'role: 7 }') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:2:61-62 error wrong-value
        unknown role: 7
        choose one of: ingroup, outgroup, comparator"
    `);
  });

  it('a text is missing in a language', async () => {
    const changes = {
      'lineage.yaml': replaced('languages: [en]', 'languages: [en, es]'),
      'story.es.mdx': 'Un saltador vive en una colina.\n',
    };
    const findings = await findingsAfter(changes);
    expect(findings.split('\n').slice(0, 6).join('\n')).toMatchInlineSnapshot(`
      "lineage.yaml:2:8-28 error text-missing
        no text in "es"
        add es: … here, or take the language off the list in lineage.yaml
      lineage.yaml:3:11-49 error text-missing
        no text in "es"
        add es: … here, or take the language off the list in lineage.yaml"
    `);
  });
});
