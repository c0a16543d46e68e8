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

  it('every level has one specimen: one finding, and not one a level', async () => {
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
        measure two individuals or more of some level to a tenth of a millimetre; without a spread one cannot tell"
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
    expect(await verdictAfter(change)).toMatchObject(cannotTell('dates-astray'));
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
});
