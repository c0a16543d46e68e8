import { describe, expect, it } from 'vitest';
import { replaced } from '../fixtures/changed-lineage.ts';
import { sectionFindings } from '../fixtures/small-section.ts';

const levels = 'sheets/levels.csv';
const rows = 'sheets/rows.csv';

describe('messages about the tables of a section', () => {
  it('an individual has two values', async () => {
    expect(await sectionFindings({ [rows]: replaced('01,one,m2', '00,one,m2') })).toMatchInlineSnapshot(`
      "sheets/rows.csv:3:1-3 error counted-twice
        00 has a value already: an individual counts once
        keep one row an individual; where left and right are there, the better preserved"
    `);
  });

  it('another tooth, a stage of wear and a level that are not known, and a length of nothing', async () => {
    const change = {
      [rows]: (text: string) =>
        text
          .replace('00,one,m2', '00,one,m3')
          .replace('01,one,m2,fresh', '01,one,m2,frsh')
          .replace('02,one,', '02,onne,')
          .replace(/03,one,m2,blunt,[\d.]+/, '03,one,m2,blunt,0'),
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/rows.csv:2:8-10 warning tooth-other
        00 is "m3", and this section compares m2: it is left out
        keep other positions in a table of their own
      sheets/rows.csv:3:11-15 error unknown-id
        unknown wear stage: "frsh"; did you mean "fresh"?
        name one of section.yaml, or add it there
      sheets/rows.csv:4:4-8 error unknown-id
        unknown level: "onne"; did you mean "one"?
        name one of the table of levels, or add it there
      sheets/rows.csv:5:17-18 error not-a-length
        "tooth-row-length" of 03 is 0; a length is more than zero
        measure again, or leave the cell empty"
    `);
  });

  it('decimal commas and formulas are told as in every table', async () => {
    const change = {
      [rows]: (text: string) =>
        text
          .replace(/00,one,m2,fresh,[\d.]+/, '00,one,m2,fresh,"10,1"')
          .replace(/01,one,m2,fresh,[\d.]+/, '01,one,m2,fresh,=E2'),
    };
    expect(
      (await sectionFindings(change))
        .split('\n')
        .filter((row) => / error /.test(row))
        .join('\n'),
    ).toMatchInlineSnapshot(`
      "sheets/rows.csv:2:17-23 error csv-number
      sheets/rows.csv:3:17-20 error csv-formula
        a spreadsheet formula or its error was left: "=E2""
    `);
  });

  it('columns lack their units, are unknown or missing', async () => {
    const change = {
      [levels]: replaced(
        'level,height (m),horizon,time-averaging (ka)',
        'level,height,horizont,time-averaging (weeks)',
      ),
      [rows]: replaced('wear,', 'waer,'),
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:1:7-13 error unit-mismatch
        the column "height" has no unit
        write one of these in the header: "height (m)", "height (cm)"
      sheets/levels.csv:1:14-22 error csv-header
        unknown column "horizont"; did you mean "horizon"?
        this table has level, height, horizon, time-averaging, source
      sheets/levels.csv:1:23-45 error unit-mismatch
        "time-averaging" cannot be given in weeks
        write one of these in the header: "time-averaging (ka)", "time-averaging (years)", "time-averaging (a)"
      sheets/rows.csv:1:27-31 error csv-header
        unknown column "waer"; did you mean "wear"?
        this table has catalogNumber, level, tooth, wear, tooth-row-length"
    `);
  });

  it('a level’s id would not be safe in an address', async () => {
    const change = {
      [levels]: replaced('two,3,', 'Level 2,3,'),
      [rows]: (text: string) => text.replaceAll(',two,', ',three,'),
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:4:1-8 error unsafe-id
        level "Level 2" is no id
        use small letters, digits and single hyphens, beginning with a letter: level-7"
    `);
  });

  it('levels without a name, named twice and without a height', async () => {
    const change = {
      [levels]: (text: string) =>
        text.replace('two,3,', ',3,').replace('four,7,', 'three,7,').replace('five,9.5,', 'five,,'),
      [rows]: (text: string) =>
        text
          .split('\n')
          .filter((row) => !/two|four|five/.test(row))
          .join('\n'),
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:4:1-2 error csv-row
        this row names no level
        fill the column level
      sheets/levels.csv:6:1-6 error duplicate-id
        the level "three" is given twice
        give one of the two another id, or remove it
      sheets/levels.csv:7:1-5 error csv-row
        the level "five" has no height
        fill the column height"
    `);
  });

  it('ids that lead nowhere, a trait that is no length, beds that overlap, a stage named twice', async () => {
    const change = {
      'section.yaml': (text: string) =>
        `${text
          .replace('trait: row-length', 'trait: muzzle-share')
          .replace('taxon: collina-media', 'taxon: collina-medium')
          .replace('id: blunt', 'id: fresh')}sources: [hopper-note]
rocks: [{ from: 0, to: 4, rock: clay }, { from: 3, to: 6, rock: sand }, { from: 6, to: 5, rock: silt }]
`,
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "section.yaml:3:8-22 error unknown-id
        unknown taxon: "collina-medium"; did you mean "collina-media"?
        name one of taxa.yaml, or add it there
      section.yaml:4:8-20 error trait-kind
        "muzzle-share" is no length, and worn crowns can only limit a length
        name a trait of traits.yaml that has length:
      section.yaml:10:11-16 error duplicate-id
        the id "fresh" is given twice
        give one of the two stages another id, or remove it
      section.yaml:11:11-22 error unknown-reference
        unknown reference: "hopper-note"; did you mean "hopper-notes"?
        name one of references.bib, or add it there
      section.yaml:12:49-50 error superposition
        the bed begins at 3 m, inside the one below it, which ends at 4 m
        list the beds from the base up, each above the one before
      section.yaml:12:88-89 error superposition
        the bed ends at 5 m and begins at 6 m
        from is the lower end, to the upper"
    `);
  });
});
