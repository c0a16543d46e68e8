import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

const callipers = (cell: string) =>
  findingsAfter({ 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', `hm-5,${cell},70.2`) });

describe('messages about tables that a spreadsheet changed', () => {
  it('a formula stands where the specimen should', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('hm-5', '=A1') })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:1-4 error csv-formula
        a spreadsheet formula or its error was left: "=A1"
        paste the value instead of the formula"
    `);
  });

  it('a column was too narrow', async () => {
    expect(await callipers('#####')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-11 error csv-formula
        a spreadsheet formula or its error was left: "#####"
        paste the value instead of the formula"
    `);
  });

  it('a share was made into a time', async () => {
    expect(await callipers('29:40')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-11 error csv-date
        "29:40" looks like a number that a spreadsheet made into a date or a time
        set the column to text or number and type the value again"
    `);
  });

  it('a catalogue number was made into a date', async () => {
    const table = 'catalogNumber,muzzle-length (mm),skull-length (mm)\n05-May,29.4,70.2\n';
    expect(await findingsAfter({ 'sheets/callipers.csv': table })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:1-7 error csv-date
        "05-May" looks like a number that a spreadsheet made into a date or a time
        set the column to text or number and type the value again"
    `);
  });

  it('a museum’s catalogue number was made into a date', async () => {
    const changes = {
      'sheets/museum.csv': 'No,Animal,ML\n5. Mai,collina-media,28\n',
      'scheme.yaml': (text: string) =>
        `${text}sheets:\n  - file: sheets/museum.csv\n    rows: specimens\n    columns: { No: catalogNumber, Animal: taxon, ML: { measurement: muzzle-length, unit: mm } }\n`,
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "sheets/museum.csv:2:1-7 error csv-date
        "5. Mai" looks like a number that a spreadsheet made into a date or a time
        set the column to text or number and type the value again"
    `);
  });

  it('digits are of another script', async () => {
    expect(await callipers('٢٩')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-8 error csv-number
        "٢٩" is not written in plain digits
        write the digits 0 to 9, a hyphen for minus and one point"
    `);
  });

  it('a number is about right', async () => {
    expect(await callipers('ca. 29')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-12 error csv-number
        "ca. 29" is about a number
        write the number alone, and its 95% plus or minus in a column of its own: "MEASUREMENT.approximate""
    `);
  });

  it('a number is a limit', async () => {
    expect(await callipers('>29')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-9 error csv-number
        ">29" is a limit, not a number
        write what was measured, and the landmark that is lost in a column of its own: "MEASUREMENT.toBreak""
    `);
  });
});

describe('messages about what a column says of another', () => {
  const table = (header: string, row: string) =>
    findingsAfter({
      'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm),${header}\nhm-5,29.4,70.2,${row}\nhm-6,34.1,80.3,\n`,
    });

  it('a break names an unknown landmark', async () => {
    expect(await table('muzzle-length.toBreak', 'snout-tpi')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:16-25 error unknown-id
        unknown landmark: "snout-tpi"; did you mean "snout-tip"?
        name one of scheme.yaml, or add it there"
    `);
  });

  it('a break names a landmark that is not listed as lost', async () => {
    expect(await table('muzzle-length.toBreak', 'snout-tip')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-10 error break-unneeded
        "muzzle-length" is measured to a break at "snout-tip", which is not listed as lost
        add { landmark: snout-tip } to lost of hm-5"
    `);
  });

  it('a column is misspelt', async () => {
    expect(await table('muzzle-length.tobreak', '')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:47-68 error csv-header
        unknown column "muzzle-length.tobreak"; did you mean "muzzle-length.toBreak"?
        name a measurement of scheme.yaml with its unit, such as "basal-length (mm)", or describe the sheet under sheets: in scheme.yaml"
    `);
  });

  it('a column speaks of a measurement that the table lacks', async () => {
    expect(await table('tooth-row-length.approximate', '')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:47-75 error csv-header
        the table has no column for "tooth-row-length", of which "tooth-row-length.approximate" speaks
        add a column such as "tooth-row-length (mm)", or remove this one"
    `);
  });

  it('a plus or minus is zero', async () => {
    expect(await table('skull-length.approximate', '0')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:16-17 error approximate-without-error
        the plus or minus is 0
        give the 95% plus or minus, more than zero; leave the cell empty for an exact value"
    `);
  });

  it('a plus or minus is in degrees', async () => {
    expect(await table('skull-length.approximate (degrees)', '3')).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:47-81 error unit-mismatch
        "skull-length" is a length, and degrees cannot say it
        give it in mm, cm, m or in"
    `);
  });

  it('a plus or minus belongs to an empty cell', async () => {
    const text =
      'specimen,muzzle-length (mm),skull-length (mm),skull-length.approximate\nhm-5,29.4,,3\nhm-6,34.1,80.3,\n';
    expect(await findingsAfter({ 'sheets/callipers.csv': text })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:12-13 error csv-row
        "3" speaks of "skull-length", which this row does not give
        give the value, or empty this cell"
    `);
  });

  it('a plus or minus of a value that was refused is not told as well', async () => {
    const text =
      'specimen,muzzle-length (mm),skull-length (mm),skull-length.approximate\nhm-5,29.4,"70,2",3\nhm-6,34.1,80.3,\n';
    expect(await findingsAfter({ 'sheets/callipers.csv': text })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-17 error csv-number
        "70,2" has a decimal comma
        write 70.2"
    `);
  });
});
