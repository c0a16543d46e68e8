import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about shape', () => {
  it('a bracket is never closed', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('living: true,', 'living: [true,') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:7:108-109 error yaml-syntax
        not YAML: flow sequence in block collection must be sufficiently indented and end with a ]
        close the bracket"
    `);
  });

  it('the file is nested beyond use', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml':
          '[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[',
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:1:1-2 error too-deep
        nested deeper than 24 levels
        records need five levels at most: look for a bracket left open"
    `);
  });

  it('an alias multiplies beyond use', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml':
          'a: &a [1,1,1,1,1,1,1,1,1]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nd: [*c,*c,*c,*c,*c,*c,*c,*c,*c]\n',
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:1:1-2 error too-many-aliases
        more than 100 repeats by alias
        write the values out"
    `);
  });

  it('a key is a record', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced('scientificName: Saltula prima', '{ x: 1 }: Saltula prima'),
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:2:24-32 error yaml-syntax
        a key is a list or a record
        write a name before the colon, or put a text that begins with a bracket between quotation marks"
    `);
  });

  it('a key stands twice', async () => {
    expect(
      await findingsAfter({ 'taxa.yaml': replaced('role: outgroup }', 'role: outgroup, role: ingroup }') }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:2:71-72 error duplicate-key
        the same key stands twice in one record
        keep one of the two"
    `);
  });

  it('a key is not known', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('role: outgroup }', 'roll: outgroup }') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:2:55-59 error unknown-key
        unknown key "roll"; did you mean "role"?
        remove it, or see which keys the editor offers here"
    `);
  });

  it('a key is missing', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('scientificName: Saltula prima, ', '') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:2:5-7 error missing-key
        missing scientificName
        add it: a text"
    `);
  });

  it('a text is a number', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('catalogNumber: "1"', 'catalogNumber: 1') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:5:18-19 error wrong-type
        catalogNumber is 1, where a text is meant
        put it between quotation marks, so that it stays as written"
    `);
  });

  it('a number is a text with its unit', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('mmPerUnit: 0.1', 'mmPerUnit: "0.1 mm"') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:24:68-76 error wrong-type
        landmarks.mmPerUnit is "0.1 mm", where a number is meant
        write the number alone: no quotation marks, no unit"
    `);
  });

  it('a number has a decimal comma', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('mmPerUnit: 0.1', 'mmPerUnit: "0,1"') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:24:68-73 error wrong-type
        landmarks.mmPerUnit is "0,1", where a number is meant
        write 0.1"
    `);
  });

  it('a word is not one of those allowed', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('role: outgroup', 'role: outgrup') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:2:61-68 error wrong-value
        unknown role: "outgrup"; did you mean "outgroup"?
        choose one of: ingroup, outgroup, comparator"
    `);
  });

  it('an id is not safe', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced('id: saltula-prima', 'id: Saltula_prima'),
        'lineage.yaml': replaced('saltula-prima', 'Saltula_prima'),
        'specimens.yaml': replaced('taxon: saltula-prima', 'taxon: Saltula_prima'),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:9:16-29 error tip-without-taxon
        the tip "Saltula prima" of the tree "main" is no taxon; did you mean "Saltula_prima"?
        name tips by ids of taxa.yaml, or add the taxon there
      specimens.yaml:12:10-23 error unknown-id
        unknown taxon: "saltula-prima"; did you mean "Saltula_prima"?
        name one of taxa.yaml, or add it there
      taxa.yaml:2:9-22 error unsafe-id
        id "Saltula_prima" is no id
        use small letters, digits and single hyphens, beginning with a letter: obm-1183"
    `);
  });

  it('an id is given twice', async () => {
    expect(await findingsAfter({ 'horizons.yaml': replaced('id: upper-shelf', 'id: lower-shelf') }))
      .toMatchInlineSnapshot(`
      "horizons.yaml:3:9-20 error duplicate-id
        the id "lower-shelf" is given twice
        give one of the two records another id, or remove it
      horizons.yaml:4:78-89 error unknown-id
        unknown horizon: "upper-shelf"; did you mean "lower-shelf"?
        name one of horizons.yaml, or add it there
      specimens.yaml:23:12-23 error unknown-id
        unknown horizon: "upper-shelf"; did you mean "lower-shelf"?
        name one of horizons.yaml, or add it there
      specimens.yaml:58:12-23 error unknown-id
        unknown horizon: "upper-shelf"; did you mean "lower-shelf"?
        name one of horizons.yaml, or add it there"
    `);
  });

  it('a list is written as a record', async () => {
    expect(await findingsAfter({ 'taxa.yaml': 'id: saltula-prima\n' })).toMatchInlineSnapshot(`
      "taxa.yaml:1:1-2 error wrong-type
        taxa is not a list
        begin each record with "- id: …""
    `);
  });

  it('an age has no form that is known', async () => {
    expect(await findingsAfter({ 'horizons.yaml': replaced('{ stage: Langhian }', '{ stag: Langhian }') }))
      .toMatchInlineSnapshot(`
      "horizons.yaml:4:51-55 error unknown-key
        unknown key "stag" in age; did you mean "stage"?
        remove it, or see which keys the editor offers here"
    `);
  });

  it('an age is written as a text', async () => {
    expect(await findingsAfter({ 'horizons.yaml': replaced('{ stage: Langhian }', 'Langhian') }))
      .toMatchInlineSnapshot(`
      "horizons.yaml:4:49-57 error wrong-type
        age is "Langhian", which is none of the forms allowed
        write { stage: … }, { stages: […] }, { from: …, to: … } or { date: …, plusMinus: …, sigma: … }"
    `);
  });

  it('NO is a text, as YAML 1.2 has it', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'institutionCode: HM\n  catalogNumber: "3"',
          'institutionCode: NO\n  catalogNumber: "3"',
        ),
      }),
    ).toMatchInlineSnapshot(`""`);
  });
});
