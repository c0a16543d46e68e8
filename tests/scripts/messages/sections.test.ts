import { describe, expect, it } from 'vitest';
import { replaced } from '../fixtures/changed-lineage.ts';
import { compileSection, sectionFindings } from '../fixtures/small-section.ts';

const levels = 'sheets/levels.csv';
const rows = 'sheets/rows.csv';

/** What the page would say of the section. */
async function verdictAfter(changes: Parameters<typeof compileSection>[0]) {
  const { compiled } = await compileSection(changes);
  return compiled?.section?.verdict;
}

const cannotTell = (reason: string) => ({ code: 'cannot-tell', reason });

describe('messages about sections', () => {
  it('a whole section is found without fault', async () => {
    expect(await sectionFindings({})).toBe('');
  });

  it('fewer than three levels can be compared', async () => {
    const change = {
      [rows]: (text: string) =>
        text
          .split('\n')
          .filter((row) => !/three|four|five/.test(row))
          .join('\n'),
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "section.yaml:1:5-15 warning levels-few
        2 of the levels can be compared
        three levels with unworn individuals are the least that the models need; with fewer one cannot tell"
    `);
    expect(await verdictAfter(change)).toMatchObject(cannotTell('fewer-than-three-levels'));
  });

  it('levels do not go up', async () => {
    const change = { [levels]: replaced('two,3,', 'two,0.5,') };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:4:1-4 warning levels-order
        the level "two" at 0.5 m follows "one" at 1 m
        list the levels from the base up, each at a height of its own; they are taken by their heights"
    `);
    const { compiled } = await compileSection(change);
    expect(compiled!.section!.levels.map(({ id }) => id).slice(1, 3)).toEqual(['two', 'one']);
  });

  it('two levels share a height', async () => {
    const change = { [levels]: replaced('two,3,', 'two,1,') };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:4:1-4 warning levels-order
        the levels "one" and "two" are both at 1 m
        list the levels from the base up, each at a height of its own; they are taken by their heights"
    `);
    expect(await verdictAfter(change)).toMatchObject(cannotTell('equal-ages'));
  });

  it('every level has one specimen', async () => {
    const change = {
      [rows]: (text: string) =>
        text
          .split('\n')
          .filter((row) => !/^\d[123],/.test(row))
          .join('\n'),
    };
    expect((await sectionFindings(change)).split('\n').slice(0, 6).join('\n')).toMatchInlineSnapshot(`
      "section.yaml:1:5-15 warning section-no-variance
        no level shows how much its individuals differ
        measure two individuals or more of some level to a tenth of a millimetre; without a spread one cannot tell
      sheets/levels.csv:3:1-4 warning level-thin
        "one" has one unworn individual
        its error is that of one animal, by the spread of the other levels"
    `);
    expect(await verdictAfter(change)).toMatchObject(cannotTell('no-variance'));
  });

  it('a level has worn crowns only', async () => {
    const change = { [rows]: (text: string) => text.replaceAll('two,m2,fresh', 'two,m2,blunt') };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:4:1-4 warning level-thin
        "two" has worn crowns only (4), and so no mean
        it is shown and takes no part in the models"
    `);
    const { compiled } = await compileSection(change);
    const level = compiled!.section!.levels.find(({ id }) => id === 'two')!;
    expect(level).toMatchObject({ estimate: null, interval: [null, null], compared: false, worn: 4 });
  });

  it('no individual differs from another', async () => {
    const change = { [rows]: (text: string) => text.replaceAll(/,[\d.]+$/gm, ',10') };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "section.yaml:1:5-15 warning section-no-variance
        no level shows how much its individuals differ
        measure two individuals or more of some level to a tenth of a millimetre; without a spread one cannot tell"
    `);
    expect(await verdictAfter(change)).toMatchObject(cannotTell('no-variance'));
  });

  it('no bed is dated, one is, or a stage stands for a date', async () => {
    const none = { [levels]: (text: string) => text.replace('lower-shelf', '').replace('upper-shelf', '') };
    expect(await sectionFindings(none)).toMatchInlineSnapshot(`
      "section.yaml:1:5-15 warning levels-undated
        no bed of the section is dated
        name the horizons of two dated beds or more in the column horizon; without them the levels have no ages, and the models tell nothing"
    `);
    expect(await verdictAfter(none)).toMatchObject(cannotTell('no-ages'));
    const one = { [levels]: replaced('upper-shelf', '') };
    expect(await sectionFindings(one)).toMatchInlineSnapshot(`
      "sheets/levels.csv:2:1-5 warning levels-undated
        "foot" is the one dated bed of the section
        name the horizons of two dated beds or more in the column horizon; without them the levels have no ages, and the models tell nothing"
    `);
    expect(await verdictAfter(one)).toMatchObject(cannotTell('no-ages'));
    expect(await verdictAfter({ [levels]: replaced('upper-shelf', 'gorse-clay') })).toMatchObject(
      cannotTell('no-ages'),
    );
  });

  it('a higher bed is dated older', async () => {
    const change = {
      [levels]: (text: string) =>
        text.replace('lower-shelf', 'x').replace('upper-shelf', 'lower-shelf').replace('x', 'upper-shelf'),
    };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:8:1-5 error superposition
        "head" at 10 m is dated 33 Ma, older than 28.5 Ma of "foot" below it
        correct a date or a height, or leave out the horizon of the one that is not trusted"
    `);
  });

  it('two dated beds have one age', async () => {
    const change = { [levels]: replaced('foot,0,lower-shelf', 'foot,0,upper-shelf') };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "sheets/levels.csv:8:1-5 warning levels-same-age
        "head" and "foot" below it have one date, 28.5 Ma
        leave out the horizon of one of the two: no time can be told between them, and the models tell nothing"
    `);
    expect(await verdictAfter(change)).toMatchObject(cannotTell('no-ages'));
  });

  it('a level lies outside the dated beds', async () => {
    expect(await sectionFindings({ [levels]: replaced('head,10,upper-shelf', 'head,8,upper-shelf') }))
      .toMatchInlineSnapshot(`
      "sheets/levels.csv:7:1-5 warning levels-undated
        "five" at 9.5 m lies outside the dated beds, 0 to 8 m, and has no age
        it is shown and takes no part in the models; a dated bed beyond it would give it an age
      sheets/levels.csv:8:1-5 warning levels-order
        the level "head" at 8 m follows "five" at 9.5 m
        list the levels from the base up, each at a height of its own; they are taken by their heights"
    `);
  });

  it('a generation has no source', async () => {
    const change = { 'section.yaml': (text: string) => `${text}generation: { years: 4 }\n` };
    expect(await sectionFindings(change)).toMatchInlineSnapshot(`
      "section.yaml:11:13-25 warning generation-unsourced
        a generation of 4 years has no source, so no rate a generation is given
        name the reference that it was taken from under source, or remove it"
    `);
    const { compiled } = await compileSection(change);
    expect(compiled!.section).toMatchObject({ generation: null, change: { haldanes: null } });
  });

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
