import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from './fixtures/changed-lineage.ts';

/*
 * Every message that an author can meet, each from the smallest mistake that brings it: the small lineage of the
 * fixtures with one change.
 */

describe('files', () => {
  it('a file that every lineage needs is missing', async () => {
    expect(await findingsAfter({ 'taxa.yaml': null })).toMatchInlineSnapshot(`
      "taxa.yaml:1:1-1 error missing-file
        there is no taxa.yaml
        add taxa.yaml to the folder of the lineage"
    `);
  });

  it('a file leads out of the folder', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'file: ../other/tree.nwk',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:9:11-28 error file-outside
        "../other/tree.nwk" is not a path inside the folder of the lineage
        copy the file into the folder and name it from there, with forward slashes"
    `);
  });

  it('a file is not UTF-8', async () => {
    expect(
      await findingsAfter({
        'references.bib': Buffer.from(
          '@book{hopper-notes, title={Caf\u00e9}, author={Heath}, year={2020}}',
          'latin1',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:1:31-32 error not-utf8
        the file is not UTF-8 (perhaps Windows-1252 or Mac Roman)
        save it again with the encoding UTF-8"
    `);
  });

  it('a file is UTF-16', async () => {
    expect(
      await findingsAfter({
        'sheets/callipers.csv': Buffer.from('\ufeffspecimen,muzzle-length (mm)\n', 'utf16le'),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-2 error not-utf8
        the file is UTF-16
        save it again with the encoding UTF-8"
    `);
  });

  it('a table is too big to be one', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': new Uint8Array(40_000_001) }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-1 error file-too-big
        sheets/callipers.csv has 40000001 bytes; at most 40000000 are read
        split the table, or leave out what is not used"
    `);
  });
});

describe('shape', () => {
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

describe('ids and languages', () => {
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
        use a name of the International Chronostratigraphic Chart"
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

describe('trees', () => {
  it('a bracket is missing in a tree', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('saltula-brevis),', 'saltula-brevis,') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:9:14-15 error tree-syntax
        the tree "main" cannot be read: "(" is never closed
        a tree reads ((one,other),third); with a semicolon at its end"
    `);
  });

  it('a tip is no taxon', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('collina-media)', 'collina-medea)') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:9:61-74 error tip-without-taxon
        the tip "collina-medea" of the tree "main" is no taxon; did you mean "collina-media"?
        name tips by ids of taxa.yaml, or add the taxon there"
    `);
  });

  it('a tip stands twice', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('collina-media)', 'collina-nana)') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:9:61-73 error tip-twice
        "collina-nana" stands at two tips of the tree "main"
        keep one of them"
    `);
  });

  it('a tree has one tip', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          '((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));',
          'saltula-prima;',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-shape
        the tree "main" has one tip
        a tree relates two taxa at least"
    `);
  });

  it('a tree has neither text nor file', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'note: { en: none }',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-choice
        the tree "main" has neither newick nor file
        give one of the two"
    `);
  });

  it('the root is younger than a tip', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('root: 40', 'root: 30') })).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-age
        the tree "main" cannot be dated: root age must be at least 33 Ma, the age of tip "saltula-prima", got 30
        correct the root age, the branch lengths, or the ages of the finds"
    `);
  });

  it('the root has no age', async () => {
    expect(
      await findingsAfter({ 'lineage.yaml': replaced('{ method: equal-share, root: 40 }', 'equal-share') }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:10:13-24 error tree-age
        the tree "main" has no age for its root
        give root in dating, in Ma: { method: equal-share, root: 55 }"
    `);
  });

  it('two trees are preferred', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          '    source: hopper-notes',
          '    source: hopper-notes\n    prefer: true\n  - { id: other, newick: "((saltula-prima,saltula-brevis),collina-vivens);", dating: { method: equal-share, root: 40 }, prefer: true }',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:13:129-133 error tree-choice
        two trees are preferred
        keep prefer: true on the one whose numbers are printed"
    `);
  });

  it('a NEXUS file holds several trees and none is chosen', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'file: trees.nex',
        ),
        'trees.nex':
          '#NEXUS\nBEGIN TREES;\nTREE one = (saltula-prima,saltula-brevis);\nTREE two = (saltula-prima,collina-nana);\nEND;\n',
      }),
    ).toMatchInlineSnapshot(`
      "trees.nex:1:1-2 error tree-choice
        the file holds 2 trees, and none is marked with *
        name one in lineage.yaml, such as name: one"
    `);
  });

  it('a NEXUS file has a mistake', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'file: trees.nex',
        ),
        'trees.nex': '#NEXUS\nBEGIN TREES;\nTREE one = (saltula-prima,saltula-brevis;\nEND;\n',
      }),
    ).toMatchInlineSnapshot(`
      "trees.nex:3:12-13 error tree-syntax
        the tree "main" cannot be read: "(" is never closed
        a tree reads ((one,other),third); with a semicolon at its end"
    `);
  });

  it('branch lengths put a tip outside its finds', async () => {
    const newick =
      '((saltula-prima:17,saltula-brevis:11.5):0,((collina-nana:20,collina-media:20):5,(collina-longa:20,collina-vivens:35):5):0);';
    const change = (text: string) =>
      text
        .replace(/newick: ".*"/, `newick: "${newick}"`)
        .replace('{ method: equal-share, root: 40 }', 'given');
    expect(await findingsAfter({ 'lineage.yaml': change })).toMatchInlineSnapshot(`
      "lineage.yaml:9:16-29 error tree-age
        "saltula-prima" stands at 23 Ma on the tree "main", and its finds are 34–32 Ma
        correct the branch lengths, or date the tree by another method"
    `);
  });
});

describe('ages', () => {
  it('the ends of an age are swapped', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': replaced('{ from: 34.0, to: 32.0 }', '{ from: 32.0, to: 34.0 }'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:53-57 error age-reversed
        from 32 Ma is younger than to 34 Ma
        from is the older end, to the younger: swap them"
    `);
  });

  it('an age lies in the future', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': replaced('{ from: 34.0, to: 32.0 }', '{ from: 34.0, to: -2 }'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:63-65 error age-in-future
        -2 Ma lies in the future
        give the age in millions of years ago, without a sign"
    `);
  });

  it('an age lies outside its stage', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': replaced('{ from: 34.0, to: 32.0 }', '{ from: 34.0, to: 32.0, stage: Chattian }'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:76-84 error age-outside-stage
        34.0–32.0 Ma lies outside the Chattian, 27.3–23.04 Ma
        correct the age or the stage; the chart’s boundaries move between editions"
    `);
  });

  it('nothing says when a taxon lived', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('  horizon: upper-shelf\n  landmarks', '  landmarks'),
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:3:9-23 error age-missing
        nothing says when "saltula-brevis" lived
        give its specimens a horizon, say living: true, or give an age with its source"
    `);
  });

  it('a find lies outside the range given for its taxon', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced(
          'scientificName: Saltula brevis,',
          'scientificName: Saltula brevis, age: { from: 20, to: 18 },',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:12-23 error find-outside-range
        this find is 28.70–28.30 Ma old, outside the 20–18 Ma given for "saltula-brevis"
        correct the horizon or the identification, or remove the age of the taxon: it is worked out from the finds"
    `);
  });

  it('a bed lies above a younger one', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': (text) =>
          text.replace('above: lower-shelf', 'above: gorse-clay').replace(', above: [upper-shelf]', ''),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:3:106-116 error superposition
        "upper-shelf" (28.70–28.30 Ma) lies above "gorse-clay" (15.98–13.82 Ma), which is not older
        correct one of the two ages, or the order of the beds"
    `);
  });

  it('a bed lies above itself', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': (text) => text.replace('to: 32.0 },', 'to: 32.0 }, above: gorse-clay,'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:78-88 error superposition
        "lower-shelf" (34.0–32.0 Ma) lies above "gorse-clay" (15.98–13.82 Ma), which is not older
        correct one of the two ages, or the order of the beds
      horizons.yaml:2:78-88 error superposition
        "lower-shelf" lies above itself, by way of gorse-clay, upper-shelf, lower-shelf
        correct the order of the beds"
    `);
  });
});

describe('measurements', () => {
  it('a length is zero', async () => {
    expect(
      await findingsAfter({
        'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,0'),
        'scheme.yaml': replaced(
          'skull-length, from: snout-tip, to: skull-rear, along: tooth-row',
          'skull-length, from: snout-tip, to: skull-rear',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-12 error not-a-length
        "skull-length" is 0; a length is more than zero
        measure again, or leave the cell empty"
    `);
  });

  it('a length is negative in a record', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'skull-length: { value: 61, unit: mm }',
          'skull-length: { value: -61, unit: mm }',
        ),
        'scheme.yaml': replaced(
          'skull-length, from: snout-tip, to: skull-rear, along: tooth-row',
          'skull-length, from: snout-tip, to: skull-rear',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:19-43 error not-a-length
        "skull-length" is -61; a length is more than zero
        measure again, or leave it out"
    `);
  });

  it('a length is in degrees', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, unit: degrees }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:38-45 error unit-mismatch
        "skull-length" is a length, and degrees cannot say it
        give it in mm, cm, m or in"
    `);
  });

  it('a column has no unit', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('skull-length (mm)', 'skull-length') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:29-41 error unit-mismatch
        the column "skull-length" has no unit
        write its unit in the header: "skull-length (mm)""
    `);
  });

  it('repeats disagree', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('[60.2, 60.0, 60.1]', '[60.2, 66.9, 60.1]') }))
      .toMatchInlineSnapshot(`
        "specimens.yaml:10:19-60 warning repeats-disagree
          the repeats of "skull-length" are 6.8 apart
          measure again; a slip of the pen or of the unit is the usual cause"
      `);
  });

  it('repeats of landmarks disagree', async () => {
    expect(
      await findingsAfter({ 'sheets/landmarks.csv': replaced('hm-3,2,0,1,207,-61', 'hm-3,2,0,1,270,-61') }),
    ).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:3:12-19 warning repeats-disagree
        "eye-front" of hm-3 stands elsewhere than in the first repeat
        digitise it again; a swapped pair of landmarks or another picture is the usual cause"
    `);
  });

  it('callipers and landmarks disagree', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': added('hm-3,20.6,66.0\n') })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:5:11-15 warning readings-disagree
        "skull-length" is 66.00 by callipers and 60.10 from landmarks
        look at both again: the scale of the picture, a landmark or the callipers may be off"
    `);
  });

  it('neither a value nor repeats are given', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ unit: mm }') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:18:19-31 error no-value
        neither a value nor repeats are given
        give value: or repeats:"
    `);
  });

  it('both a value and repeats are given', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, repeats: [61, 62], unit: mm }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:19-61 error many-values
        both a value and repeats are given
        keep the repeats: their mean is used"
    `);
  });

  it('two records stand and none is preferred', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          '{ value: 61, unit: mm }',
          '[{ value: 61, unit: mm }, { value: 61.5, unit: mm, source: hopper-notes }]',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:45-92 error many-values
        "skull-length" is recorded 2 times, and none is preferred
        keep them all with their sources, and write preferred: true on the one to use"
    `);
  });

  it('about has no plus or minus', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, unit: mm, approximate: true }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:55-59 error approximate-without-error
        approximate is true, where its plus or minus is meant
        give the 95% plus or minus in the unit of the value: approximate: 6"
    `);
  });

  it('nothing says what a measurement is', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced(
          '  - { id: tooth-row-length, from: tooth-front, to: tooth-rear }',
          '  - { id: tooth-row-length }',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:15:11-27 error measurement-undefined
        nothing says what "tooth-row-length" is
        give from and to, angle, count, or a definition in words for callipers"
    `);
  });

  it('a measurement has one end', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced(
          'id: tooth-row-length, from: tooth-front, to: tooth-rear',
          'id: tooth-row-length, from: tooth-front',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:15:11-27 error measurement-undefined
        "tooth-row-length" has one end only
        give both from and to"
    `);
  });

  it('centimetres are taken for millimetres', async () => {
    const more =
      '- { id: hm-10, taxon: saltula-prima, horizon: lower-shelf }\n- { id: hm-11, taxon: saltula-prima, horizon: lower-shelf }\n';
    const changes = {
      'specimens.yaml': added(more),
      'sheets/callipers.csv': added('hm-10,20.4,60.6\nhm-11,20.6,6.07\n'),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "sheets/callipers.csv:6:12-16 warning unit-slip
        "skull-length" is 10.0 times smaller than other specimens of "saltula-prima" suggest
        centimetres and millimetres differ by 10: check the unit and the number"
    `);
  });

  it('one length of a lone specimen does not fit its other lengths', async () => {
    const changes = { 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,2.94,70.2') };
    expect(
      await findingsAfter({
        ...changes,
        'specimens.yaml': added('- { id: hm-10, taxon: saltula-prima, horizon: lower-shelf }\n'),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-10 warning unit-slip
        "muzzle-length" is 7.9 times smaller than the other lengths of this specimen suggest
        centimetres and millimetres differ by 10: check the unit and the number"
    `);
  });
});

describe('landmarks and breaks', () => {
  it('a sheet has no row for a specimen', async () => {
    expect(
      await findingsAfter({
        'sheets/landmarks.csv': replaced('hm-4,1,10,10,250,-50,640,0,90,30,300,30\n', ''),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:30:35-55 error sheet-shape
        "sheets/landmarks.csv" has no row for hm-4
        add its landmarks to the sheet, or name the sheet that has them"
    `);
  });

  it('a landmark lies outside its picture', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('mmPerUnit: 0.1', 'mmPerUnit: 0.1, picture: images/hm-3.svg'),
        'images/hm-3.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 500 300"/>',
      }),
    ).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:2:12-19 error outside-picture
        "eye-front" at 205, -60 lies outside its picture of 500 × 300
        digitise the point again, or name the picture that it was taken from
      sheets/landmarks.csv:2:20-27 error outside-picture
        "skull-rear" at 600, -10 lies outside its picture of 500 × 300
        digitise the point again, or name the picture that it was taken from
      sheets/landmarks.csv:3:12-19 error outside-picture
        "eye-front" at 207, -61 lies outside its picture of 500 × 300
        digitise the point again, or name the picture that it was taken from
      sheets/landmarks.csv:3:20-27 error outside-picture
        "skull-rear" at 602, -10 lies outside its picture of 500 × 300
        digitise the point again, or name the picture that it was taken from"
    `);
  });

  it('a scale is zero', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('mm: 10 }', 'mm: 0 }') })).toMatchInlineSnapshot(`
      "specimens.yaml:30:64-101 error scale
        the scale bar is 0 mm over 100 units
        give the two ends of the bar in the picture and its length, both more than zero"
    `);
  });

  it('a scale is missing', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced(', mmPerUnit: 0.1', '') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:24:35-55 error scale
        nothing says how long a unit of the sheet is
        give mmPerUnit: 1 when the sheet is in mm, or the two ends and the length of the scale bar"
    `);
  });

  it('a pair of landmarks was swapped in a mirrored specimen', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced(
          '  - { id: tooth-rear,',
          '  - { id: left-a, name: { en: a }, side: left, pair: right-a }\n  - { id: right-a, name: { en: a }, side: right, pair: left-a }\n  - { id: left-b, name: { en: b }, side: left, pair: right-b }\n  - { id: right-b, name: { en: b }, side: right, pair: left-b }\n  - { id: left-c, name: { en: c }, side: left, pair: right-c }\n  - { id: right-c, name: { en: c }, side: right, pair: left-c }\n  - { id: tooth-rear,',
        ),
        'specimens.yaml': replaced(
          'id: hm-9\n  taxon: collina-dubia',
          'id: hm-9\n  landmarks: { view: left, sheet: sheets/pairs.csv, mmPerUnit: 1, mirrored: true }\n  taxon: collina-dubia',
        ),
        'sheets/pairs.csv':
          'specimen,landmark,x,y\nhm-9,left-a,0,0\nhm-9,right-a,10,0\nhm-9,left-b,0,5\nhm-9,right-b,10,5\nhm-9,left-c,10,9\nhm-9,right-c,0,9\n',
      }),
    ).toMatchInlineSnapshot(`
      "sheets/pairs.csv:6:13-17 warning sides-swapped
        "left-c" and its pair stand the other way round than the rest of hm-9
        swap the two points: in a mirrored picture left and right change places"
    `);
  });

  it('a substitute axis is turned by more than is written', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced('turned: 0', 'turned: 12'),
        'sheets/landmarks.csv': added('hm-8,1,10,10,250,-50,640,0,90,30,300,30\n'),
        'specimens.yaml': replaced(
          '  taxon: collina-media\n',
          '  taxon: collina-media\n  landmarks: { view: left, sheet: sheets/landmarks.csv, mmPerUnit: 0.1 }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:5:107-109 warning axis-turned
        the substitute axis is turned by -0.9 degrees on skulls that have both, and 12 is written
        write turned: -0.9"
    `);
  });

  it('a length is given whole though its end is lost', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "2"\n',
          'catalogNumber: "2"\n  lost: [{ landmark: skull-rear }]\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:19:19-42 error break-unmarked
        "skull-length" is given whole, and its end "skull-rear" is lost
        add toBreak: skull-rear if it was measured to the break; or take "skull-rear" off lost"
    `);
  });

  it('a length is measured to a break that is not listed', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, unit: mm, toBreak: skull-rear }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:19-63 error break-unneeded
        "skull-length" is measured to a break at "skull-rear", which is not listed as lost
        add { landmark: skull-rear } to lost of hm-2"
    `);
  });

  it('a length is measured to a break at no end of it', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, unit: mm, toBreak: tooth-rear }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:19-63 error break-unneeded
        "tooth-rear" is no end of "skull-length"
        its landmarks are snout-tip, skull-rear"
    `);
  });

  it('a landmark is lost and digitised', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  lost: [{ landmark: tooth-rear }]\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:2:34-40 error lost-and-present
        "tooth-rear" is lost in hm-3, and the sheet has a point for it
        empty the cells, or take it off lost; points along the break belong under lost
      sheets/landmarks.csv:3:34-40 error lost-and-present
        "tooth-rear" is lost in hm-3, and the sheet has a point for it
        empty the cells, or take it off lost; points along the break belong under lost"
    `);
  });

  it('filler and distortion are left without treatment', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  filler: [tooth-rear]\n  distortion: { kind: crushed, affects: [skull-rear] }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:12-22 error untreated
        "tooth-rear" lies on filler, and nothing says what was done about it
        write { landmark: tooth-rear, treatment: excluded }, or taken-as-found with its error
      specimens.yaml:24:15-55 error untreated
        the bone is crushed, and nothing says what was done about it
        add treatment: excluded, corrected or taken-as-found"
    `);
  });

  it('filler is taken as found without a plus or minus', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  filler: [{ landmark: tooth-rear, treatment: taken-as-found }]\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:12-63 error approximate-without-error
        "tooth-rear" is taken from filler without a plus or minus
        add error: in mm (95%)"
    `);
  });

  it('a break gives no limit where the axis decides which way it would go', async () => {
    const changes = {
      'specimens.yaml': added(
        '- id: hm-10\n  taxon: collina-media\n  horizon: gorse-clay\n  landmarks: { view: left, sheet: sheets/broken.csv, mmPerUnit: 1 }\n  lost: [{ landmark: snout-tip, break: [[0, 0]], axisWithin: 45 }]\n',
      ),
      'sheets/broken.csv':
        'specimen,landmark,x,y\nhm-10,eye-front,100,-50\nhm-10,skull-rear,110,50\nhm-10,tooth-front,20,60\nhm-10,tooth-rear,60,60\n',
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "specimens.yaml:63:9-67 warning limit-refused
        the break gives no limit for "muzzle-share": from one point of the break it would be a floor, from another a ceiling
        its value stays open; a landmark that survives may serve better"
    `);
  });

  it('landmarks of one length are in different views', async () => {
    const change = (text: string) =>
      text
        .replace('- { id: left }', '- { id: left }\n  - { id: top }')
        .replace('front of the eye socket }, views: [left]', 'front of the eye socket }, views: [top]');
    expect(await findingsAfter({ 'scheme.yaml': change })).toMatchInlineSnapshot(`
      "scheme.yaml:14:11-24 error views-mixed
        no view shows every landmark of "muzzle-length"
        measure it by callipers alone, with a definition, or add a view in three dimensions"
    `);
  });
});

describe('who counts', () => {
  it('a cast has no original', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "5"\n',
          'catalogNumber: "5"\n  preparations: "cast of: hm-99"\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:35:17-33 error cast-alone
        the original of this cast is not recorded: "hm-99"
        record the original as a specimen of its own, or correct the id"
    `);
  });

  it('one catalogue number stands twice', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('catalogNumber: "2"', 'catalogNumber: "1"') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:14:18-21 error counted-twice
        "hm-1" has the same catalogue number: one animal would count twice
        keep one record for one animal, or correct the number"
    `);
  });

  it('a cast is of another taxon than its original', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "5"\n',
          'catalogNumber: "5"\n  preparations: "cast of: hm-1"\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:32:10-23 error counted-twice
        a cast of "hm-1", which is "saltula-prima": one animal would count in two taxa
        give cast and original the same taxon"
    `);
  });

  it('a composite is admitted to a ratio', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "2"\n',
          'catalogNumber: "2"\n  association: composite\n  admitted: { en: it fits }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:15:16-25 error mixed-individuals
        "muzzle-share" is a ratio within one animal, and this is a composite
        remove admitted: lengths of several animals make no ratio"
    `);
  });

  it('a juvenile is admitted without a reason', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('lifeStage: juvenile', 'lifeStage: juvenile\n  admitted: true'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:49:13-17 error admitted-without-reason
        admitted is true, where a reason is meant
        say in each language why it counts: admitted: { en: … }"
    `);
  });

  it('a trait counts the young without a reason', async () => {
    expect(await findingsAfter({ 'traits.yaml': replaced('scale: plain', 'scale: plain\n  adults: all') }))
      .toMatchInlineSnapshot(`
      "traits.yaml:7:11-14 error admitted-without-reason
        "muzzle-share" counts young specimens without a reason
        say why under admits, or write adults: only"
    `);
  });
});

describe('traits', () => {
  it('a trait is of two kinds', async () => {
    expect(
      await findingsAfter({
        'traits.yaml': replaced('scale: plain', 'scale: plain\n  length: skull-length'),
      }),
    ).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 error trait-kind
        "muzzle-share" is not one kind of trait
        give exactly one of ratio, length, angle, count, or size with a list"
    `);
  });

  it('a logit trait has a value above one hundred', async () => {
    expect(
      await findingsAfter({
        'traits.yaml': replaced('scale: plain', 'scale: logit'),
        'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,72.4,70.2'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:31:7-11 error scale-outside
        "muzzle-share" is 103.1 in hm-5, and a logit scale needs more than 0 and less than 100
        look for a slip, or choose another scale for the trait"
    `);
  });

  it('no taxon has two specimens', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': (text) => text.replace(/- id: hm-2[\s\S]*?(?=- id: hm-3)/, ''),
      }),
    ).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 warning spread-missing
        no taxon has two specimens for "muzzle-share", so nothing says how much animals of one kind differ
        measure a second specimen of any taxon; until then intervals are missing, and inferred values are at best"
    `);
  });

  it('the spread grows with the mean', async () => {
    const taxa = ['saltula-prima', 'saltula-brevis', 'collina-nana', 'collina-media', 'collina-longa'];
    const shares = taxa.flatMap((taxon, index) =>
      [0.95, 1, 1.05].map((factor) => ({ taxon, share: 10 * (index + 1) * factor })),
    );
    const specimens = shares.map(
      ({ taxon }, index) => `- { id: s-${index}, taxon: ${taxon}, horizon: gorse-clay }\n`,
    );
    const rows = shares.map(({ share }, index) => `s-${index},${share},100\n`);
    const changes = {
      'specimens.yaml': specimens.join('') + '- { id: s-99, taxon: collina-dubia, horizon: gorse-clay }\n',
      'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${rows.join('')}`,
      'sheets/landmarks.csv': null,
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 warning spread-unequal
        the spread of "muzzle-share" grows with its mean
        consider scale: log, or say under why the plain scale is right"
    `);
  });

  it('nothing can be estimated where two exact taxa stand at one point of the tree', async () => {
    const newick =
      '((saltula-prima:0,saltula-brevis:0):0,((collina-nana:20,collina-media:20):5,(collina-longa:20,collina-vivens:35):5):0);';
    const changes = {
      'lineage.yaml': (text: string) =>
        text
          .replace(/newick: ".*"/, `newick: "${newick}"`)
          .replace('{ method: equal-share, root: 40 }', 'given'),
      'horizons.yaml': (text: string) =>
        text
          .replace('{ from: 34.0, to: 32.0 }', '{ from: 41, to: 39 }')
          .replace('{ date: 28.50, plusMinus: 0.20, sigma: 2 }', '{ from: 40.5, to: 39 }'),
      'specimens.yaml': (text: string) =>
        text
          .replace(/- id: hm-2[\s\S]*?(?=- id: hm-3)/, '')
          .replaceAll(/repeats: \[([\d.]+),[^\]]*\]/g, 'value: $1'),
      'sheets/landmarks.csv': (text: string) => text.replace(/hm-3,2.*\n/, ''),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 warning cannot-estimate
        "muzzle-share" cannot be estimated on the tree "main": "saltula-prima" and "saltula-brevis" are exact and no time lies between them: at most one can be exact
        its missing values stay unknown until the records are corrected
      traits.yaml:2:7-19 warning spread-missing
        no taxon has two specimens for "muzzle-share", so nothing says how much animals of one kind differ
        measure a second specimen of any taxon; until then intervals are missing, and inferred values are at best"
    `);
  });
});

describe('texts, pictures and permissions', () => {
  it('a picture has no text', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  pictures: [{ file: images/a.svg, rights: { image: Bo Heath, licence: CC0-1.0 } }]\n',
        ),
        'images/a.svg': '<svg viewBox="0 0 1 1"/>',
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:14-83 error picture-alt
        "images/a.svg" has no text for people who cannot see it
        add alt: what the picture shows, in each language"
    `);
  });

  it('nothing says whose a picture is', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  pictures: [{ file: images/a.svg, alt: { en: a skull } }]\n',
        ),
        'images/a.svg': '<svg viewBox="0 0 1 1"/>',
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:14-58 error picture-rights
        nothing says under rights whose "images/a.svg" is (image and licence missing)
        add rights: { image: who holds them, licence: … }"
    `);
  });

  it('a picture is not in the folder', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  pictures: [{ file: images/a.svg, alt: { en: a skull }, rights: { image: Bo Heath, licence: CC0-1.0 } }]\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:22-34 error missing-file
        there is no file "images/a.svg"
        add the file, or correct its path from the folder of the lineage"
    `);
  });

  it('a licence is not known', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('licence: CC0-1.0', 'licence: CCO-1.0') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:15:10-17 error licence
        "CCO-1.0" is no known licence; did you mean "CC0-1.0"?
        give an SPDX identifier such as CC-BY-4.0, LicenseRef-… for an agreement of your own, or the address of the licence"
    `);
  });

  it('a picture may not be shown on pages', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  pictures: [{ file: images/a.svg, alt: { en: a skull }, rights: { image: Bo Heath, licence: CC0-1.0, venues: [gallery] } }]\n',
        ),
        'images/a.svg': '<svg viewBox="0 0 1 1"/>',
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:22-34 error permission
        "images/a.svg" may be shown in gallery, not on pages
        ask for permission, or take the picture off the list"
    `);
  });

  it('a permission has ended', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  rights: { image: Bo Heath, licence: CC0-1.0, until: 2026-11-30 }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:55-65 error permission
        the permission ended on 2026-11-30
        renew it, or remove the picture"
    `);
  });

  it('the lineage is under embargo', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced('licence: CC0-1.0', 'licence: CC0-1.0\nembargo: 2027-01-01'),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:16:10-20 error embargo
        this lineage is under embargo until 2027-01-01
        wait, or build a preview"
    `);
  });

  it('a name is informal', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced(
          'scientificName: Collina dubia',
          'scientificName: Collina dubia, nomenclature: informal',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:8:69-77 error informal-name
        "Collina dubia" is an informal name
        publish the name first: a name on a public page can be taken for its publication; a preview shows it"
    `);
  });

  it('an exact place stands in a record', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  locality: { name: Shelf, public: true, decimalLatitude: 51.2 }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:42-57 error exact-place
        an exact place ("decimalLatitude") would be published from here
        move it to private.yaml, which is kept out of version control"
    `);
  });

  it('an exact place is hidden in a text', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  locality: { name: "Shelf, 51°12\'N 2°30\'W", public: true }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:21-44 error exact-place
        an exact place would be published from here
        move the coordinates to private.yaml, and name the district or county here"
    `);
  });
});

describe('references', () => {
  it('a reference has no year', async () => {
    expect(await findingsAfter({ 'references.bib': replaced('  year = {2020},\n', '') }))
      .toMatchInlineSnapshot(`
      "references.bib:1:10-22 error reference-incomplete
        "hopper-notes" has no year
        add it to the entry"
    `);
  });

  it('a reference is cited nowhere', async () => {
    expect(
      await findingsAfter({
        'references.bib': added('@book{spare, author = {Heath, Bo}, title = {Spare}, year = 2001}\n'),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:10:7-12 warning reference-unused
        "spare" is cited nowhere
        cite it under sources or source, or remove it"
    `);
  });

  it('a reference is not closed', async () => {
    expect(
      await findingsAfter({
        'references.bib': replaced('note = {Invented for tests}\n}', 'note = {Invented for tests\n'),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:10:1-1 error bibtex-syntax
        not BibTeX: unterminated brace-value
        close the braces of the entry, and put a comma between its fields"
    `);
  });

  it('a key is given twice', async () => {
    expect(
      await findingsAfter({
        'references.bib': added('@book{hopper-notes, author = {Heath, Bo}, title = {Spare}, year = 2001}\n'),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:10:7-19 error duplicate-id
        the key "hopper-notes" is given twice
        rename or remove one of the entries"
    `);
  });
});

describe('tables', () => {
  it('a decimal comma in a cell', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,"29,4",70.2') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-12 error csv-number
        "29,4" has a decimal comma
        write 29.4"
    `);
  });

  it('thousands are grouped', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,"1,070.2"') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-20 error csv-number
        "1,070.2" has separators inside the number
        write digits and one decimal point, such as 1070.2"
    `);
  });

  it('n/a stands in a cell', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,n/a') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-14 error csv-number
        "n/a" stands where a number should
        if it means ‘not measured’, leave the cell empty, or list the word under notMeasured of this sheet in scheme.yaml"
    `);
  });

  it('text stands in a number cell', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,about 70') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-19 error csv-number
        "about 70" is not a number
        write the number alone, with its unit in the header; leave the cell empty for ‘not measured’"
    `);
  });

  it('a formula was left', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,=B2*2.4') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-18 error csv-formula
        a spreadsheet formula or its error was left: "=B2*2.4"
        paste the value instead of the formula"
    `);
  });

  it('a spreadsheet made a date', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,07-Feb') }))
      .toMatchInlineSnapshot(`
        "sheets/callipers.csv:2:11-17 error csv-date
          "07-Feb" looks like a number that a spreadsheet made into a date
          set the column to text or number and type the value again"
      `);
  });

  it('two columns have one name', async () => {
    expect(
      await findingsAfter({ 'sheets/callipers.csv': replaced('skull-length (mm)', 'muzzle-length (mm)') }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:29-47 error csv-header
        two columns are called "muzzle-length (mm)"
        rename or remove one of them"
    `);
  });

  it('a row is too long', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,70,2') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:14-15 error csv-ragged
        this row has 4 cells where the header has 3
        quote a cell that holds a comma, and write decimals with a point"
    `);
  });

  it('a row is too short', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-10 error csv-ragged
        this row has 2 cells where the header has 3
        add the missing commas"
    `);
  });

  it('semicolons separate the cells', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': (text) => text.replaceAll(',', ';') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-46 error csv-separator
        cells are separated by semicolons
        save the table as comma-separated values in UTF-8"
    `);
  });

  it('a quotation mark is never closed', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,"29.4,70.2') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-7 error csv-quote
        a quotation mark is never closed
        close it, or remove it"
    `);
  });

  it('a column is not known', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('skull-length (mm)', 'skul-length (mm)') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:29-45 error csv-header
        unknown column "skul-length (mm)"; did you mean "skull-length"?
        name a measurement of scheme.yaml with its unit, such as "basal-length (mm)", or describe the sheet under sheets: in scheme.yaml"
    `);
  });

  it('a row names no specimen', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4', '  ,29.4') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:1-3 error csv-row
        this row names no specimen
        fill the column specimen or catalogNumber"
    `);
  });
});

describe('stories', () => {
  it('a number is typed into a story', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': replaced('reads <Value of="collina-vivens" />', 'reads 42 or ٤٢ per cent'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:7:36-38 error story-digits
        a number is typed into the story: "42"
        place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result
      story.en.mdx:7:42-44 error story-digits
        a number is typed into the story: "٤٢"
        place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result"
    `);
  });

  it('a number stands in a heading', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('## One living animal', '## Animal no. 6') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:5:15-16 error story-digits
        a number is typed into the story: "6"
        place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result"
    `);
  });

  it('a catalogue number, a code, a link target and a plain text may hold digits', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': added(
          '\nSkull HM 6 is `no. 6`, see [the list](https://example.org/6).\n\n<Plain>Open 9 to 5.</Plain>\n',
        ),
      }),
    ).toMatchInlineSnapshot(`""`);
  });

  it('a number is told in words beside a unit', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': added(
          '\nIt lived thirty million years ago; the muzzle is half of the muzzle share.\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:11:10-24 warning story-number-word
        a number in words: "thirty million"
        if it is a result, place it with <Value>, <Age> or <Count>; round words such as "about half" stay true only by luck
      story.en.mdx:11:50-74 warning story-number-word
        a number in words: "half of the muzzle share"
        if it is a result, place it with <Value>, <Age> or <Count>; round words such as "about half" stay true only by luck"
    `);
  });

  it('a misleading phrase is used', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': added('\nThis missing link evolved into the modern hopper, a living fossil.\n'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:11:6-18 warning story-phrase
        think again about "missing link"
        no fossil is a link of a chain: write relative, or transitional feature (Mead 2009)
      story.en.mdx:11:19-31 warning story-phrase
        think again about "evolved into"
        named fossils are tips, not one another’s ancestors (MacDonald & Wiley 2012): write related to, or has, where a forebear had
      story.en.mdx:11:53-66 warning story-phrase
        think again about "living fossil"
        every living animal has been evolving as long as every other: say which feature has changed little"
    `);
  });

  it('a component is not known', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\n<Valu of="collina-vivens" />\n') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:11:1-6 error story-component
        unknown component <Valu>; did you mean "Value"?
        stories use Step, Value, Name, Age, Count, Term, Aside, Plain, Changes; everything else is Markdown"
    `);
  });

  it('an attribute is not known', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('<Step focus=', '<Step focuss=') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:7-30 error story-component
        <Step> has no attribute focuss; did you mean "focus"?
        it has focus, show, trait, age"
    `);
  });

  it('an attribute is missing', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\n<Age />\n') })).toMatchInlineSnapshot(`
      "story.en.mdx:11:1-5 error story-component
        <Age> has no of
        write <Age of="…">"
    `);
  });

  it('an attribute is code', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('show="figure"', 'show={figure}') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:30-43 error story-component
        an attribute of <Step> is code
        write a plain text between quotation marks"
    `);
  });

  it('a taxon in a story is misspelt', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': replaced('<Name of="collina-vivens" />', '<Name of="collina-vivans" />'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:7:7-26 error unknown-id
        unknown taxon: "collina-vivans"; did you mean "collina-vivens"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('a focus names an unknown member of a clade', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': replaced('focus="collina-vivens"', 'focus="clade:collina-nana+collina-vivans"'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:3:7-48 error unknown-id
        unknown taxon: "collina-vivans"; did you mean "collina-vivens"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('what a step shows is not known', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('show="figure"', 'show="figur"') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:30-42 error story-component
        unknown show: "figur"; did you mean "figure"?
        choose one of: figure, measurement, slice, table, bone, ribbons"
    `);
  });

  it('a step has no heading', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('## One living animal', 'One living animal') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:1-6 error story-heading
        a step does not begin with a heading
        write a line "## …" first inside <Step>, after an empty line"
    `);
  });

  it('a component is never closed', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('</Step>', '') })).toMatchInlineSnapshot(`
      "story.en.mdx:1:1-2 error story-syntax
        the story cannot be read: expected a closing tag for \`<Step>\` (3:1-3:44)
        close every component, and write < and { as &lt; and &#123; where they are meant as characters"
    `);
  });

  it('a story imports', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\nimport x from "y"\n\nMore.\n') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:11:1-18 error story-component
        a story imports and exports nothing
        remove the line: the components are at hand without it"
    `);
  });

  it('braces hold code', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\nThe answer is {6 * 7}.\n') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:11:15-22 error story-component
        code in braces
        write the text itself, or place a number with <Value>, <Age> or <Count>"
    `);
  });

  it('a language has no story', async () => {
    const change = (text: string) => text.replace('languages: [en]', 'languages: [en, es]');
    const findings = await findingsAfter({ 'lineage.yaml': change });
    expect(
      findings
        .split('\n')
        .filter((_, index, lines) => /story-missing/.test(lines[index - (index % 3)]!))
        .join('\n'),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:5:12-20 error story-missing
        there is no story in "es"
        add story.es.mdx, or take the language off the list"
    `);
  });
});
