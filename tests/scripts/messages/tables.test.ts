import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about tables', () => {
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
          "about 70" is about a number
          write the number alone, and its 95% plus or minus in a column of its own: "MEASUREMENT.approximate""
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
          "07-Feb" looks like a number that a spreadsheet made into a date or a time
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

  it('a museum’s own table is not described: one finding, whatever its headers', async () => {
    const own = (text: string) =>
      text
        .replace('specimen,', 'Nr,Species,')
        .replace('muzzle-length (mm)', 'Muzzle')
        .replace('skull-length (mm)', 'Skull');
    const rows = (text: string) => text.replaceAll(/^(hm-\d),/gm, '$1,some,');
    expect(await findingsAfter({ 'sheets/callipers.csv': (text) => rows(own(text)) })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-3 error csv-header
        no column says which specimen a row is of
        head a column specimen or catalogNumber, or say under sheets: in scheme.yaml what the columns of this file hold"
    `);
  });

  it('a table names its animals in full, or by names that the scheme explains: nothing is told', async () => {
    const table = (name: string) =>
      `specimen,taxon,muzzle-length (mm),skull-length (mm)\nhm-5,${name},29.4,70.2\nhm-6,collina-vivens,34.1,80.3\n`;
    expect(await findingsAfter({ 'sheets/callipers.csv': table('Collina longa') })).toBe('');
    const sheets = `sheets:
  - file: sheets/callipers.csv
    taxa: { C. longa: collina-longa, collina-vivens: collina-vivens }
    columns:
      specimen: specimen
      taxon: taxon
      muzzle-length (mm): { measurement: muzzle-length, unit: mm }
      skull-length (mm): { measurement: skull-length, unit: mm }
`;
    const mapped = { 'scheme.yaml': added(sheets), 'sheets/callipers.csv': table('C. longa') };
    expect(await findingsAfter(mapped)).toBe('');
  });

  it('no column says which specimen a row is of: told once, and not at every row', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': (text) => text.replace('specimen,', 'sex,') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-4 error csv-header
        no column says which specimen a row is of
        head a column specimen or catalogNumber, or say under sheets: in scheme.yaml what the columns of this file hold"
    `);
  });

  it('the column of specimens is misspelt: one mistake', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': (text) => text.replace('specimen,', 'specimn,') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-8 error csv-header
        unknown column "specimn"; did you mean "specimen"?
        name a measurement of scheme.yaml with its unit, such as "basal-length (mm)", or describe the sheet under sheets: in scheme.yaml"
    `);
  });

  it('a table names another taxon than the record', async () => {
    const table =
      'specimen,taxon,muzzle-length (mm),skull-length (mm)\nhm-5,collina-nana,29.4,70.2\nhm-6,collina-vivens,34.1,80.3\n';
    expect(await findingsAfter({ 'sheets/callipers.csv': table })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-18 error csv-row
        hm-5 is "collina-nana" here and "collina-longa" in its record
        correct one of the two, name it under taxa: of the sheet in scheme.yaml, or map the column to ignore there"
    `);
  });

  it('a museum’s table names a taxon that is not known', async () => {
    const mapping =
      'sheets:\n  - file: sheets/more.csv\n    rows: specimens\n    columns: { Number: catalogNumber, Kind: taxon, "PL (mm)": { measurement: muzzle-length, unit: mm } }\n';
    const changes = {
      'scheme.yaml': added(mapping),
      'sheets/more.csv': 'Number,Kind,PL (mm)\n77,saltula-prma,20.2\n',
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "sheets/more.csv:2:4-16 error unknown-id
        unknown taxon: "saltula-prma"; did you mean "saltula-prima"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('a museum’s table has a column that its mapping leaves out', async () => {
    const mapping =
      'sheets:\n  - file: sheets/more.csv\n    rows: specimens\n    columns: { Number: catalogNumber, Kind: taxon }\n';
    const changes = { 'scheme.yaml': added(mapping), 'sheets/more.csv': 'Number,Kinds\n77,saltula-prima\n' };
    expect((await findingsAfter(changes)).split('\n').slice(0, 3).join('\n')).toMatchInlineSnapshot(`
      "sheets/more.csv:1:8-13 error csv-header
        the column "Kinds" is not described in scheme.yaml; did you mean "Kind"?
        add it to columns of this sheet, with ignore if it is not used"
    `);
  });
});
