import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced, type Change } from '../fixtures/changed-lineage.ts';

/** The small lineage with a scan of its third specimen, in a long table whose rows of the snout and the eye are given. */
function scanned(snout: string, eye: string, views = '[left, scan]'): Record<string, Change> {
  return {
    'scheme.yaml': (text) =>
      text
        .replace('- { id: left }', '- { id: left }\n  - { id: scan, dimensions: 3 }')
        .replaceAll('views: [left]', `views: ${views}`),
    'specimens.yaml': replaced(
      'landmarks: { view: left, sheet: sheets/landmarks.csv, mmPerUnit: 0.1 }',
      'landmarks: { view: scan, sheet: sheets/scan.csv, mmPerUnit: 0.1 }',
    ),
    'sheets/landmarks.csv': (text) => text.replace(/hm-3.*\n/g, ''),
    'sheets/scan.csv': `specimen,landmark,x,y,z\nhm-3,snout-tip,${snout}\nhm-3,eye-front,${eye}\nhm-3,skull-rear,600,-10,2\nhm-3,tooth-front,80,20,0\nhm-3,tooth-rear,280,20,0\n`,
  };
}

describe('messages about views', () => {
  it('points in three dimensions are read from a long table', async () => {
    expect(await findingsAfter(scanned('0,0,1', '205,-60,3'))).toBe('');
  });

  it('a point of a scan has no y', async () => {
    expect(await findingsAfter(scanned('0,,1', '205,-60,3'))).toMatchInlineSnapshot(`
      "sheets/scan.csv:2:16-20 error csv-row
        a point has no y
        give every coordinate, or leave all of them empty for a point that is not there"
    `);
  });

  it('a point of a scan has no z', async () => {
    expect(await findingsAfter(scanned('0,0,', '205,-60,3'))).toMatchInlineSnapshot(`
      "sheets/scan.csv:2:16-20 error csv-row
        "snout-tip" has no z, and the view "scan" has three dimensions
        give every coordinate, or leave all of them empty for a point that is not there"
    `);
  });

  it('a flat sheet is named as a scan', async () => {
    const changes = {
      ...scanned('0,0,1', '205,-60,3'),
      'specimens.yaml': replaced(
        'view: left, sheet: sheets/landmarks.csv, mmPerUnit',
        'view: scan, sheet: sheets/landmarks.csv, mmPerUnit',
      ),
      'sheets/landmarks.csv': added(''),
    };
    delete (changes as Record<string, Change>)['sheets/scan.csv'];
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "specimens.yaml:24:22-26 error sheet-shape
        the view "scan" has three dimensions, and points of "sheets/landmarks.csv" have x and y alone
        name the view that the sheet was digitised in, or give the view its dimensions in scheme.yaml"
    `);
  });

  it('a scan is named as a picture', async () => {
    const changes = {
      ...scanned('0,0,1', '205,-60,3'),
      'specimens.yaml': replaced(
        'landmarks: { view: left, sheet: sheets/landmarks.csv, mmPerUnit: 0.1 }',
        'landmarks: { view: left, sheet: sheets/scan.csv, mmPerUnit: 0.1 }',
      ),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "specimens.yaml:24:22-26 error sheet-shape
        the view "left" has two dimensions, and points of "sheets/scan.csv" have x, y and z
        name the view that the sheet was digitised in, or give the view its dimensions in scheme.yaml"
    `);
  });

  it('landmarks are digitised in a view that does not show them', async () => {
    expect(await findingsAfter(scanned('0,0,1', '205,-60,3', '[left]'))).toMatchInlineSnapshot(`
      "sheets/scan.csv:2:16-21 error views-mixed
        "snout-tip" and 4 more are digitised in the view "scan", where the scheme has no such landmark
        add scan to the views of the landmark in scheme.yaml, or name the view that the sheet was digitised in"
    `);
  });

  it('rows of a sheet are of a specimen whose record does not name it', async () => {
    expect(
      await findingsAfter({ 'sheets/landmarks.csv': added('hm-9,1,10,10,250,-50,640,0,90,30,300,30\n') }),
    ).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:5:1-5 warning rows-unused
        nothing uses these rows of hm-9: its record does not name "sheets/landmarks.csv"
        add landmarks: { view: …, sheet: sheets/landmarks.csv } to hm-9, or remove the rows"
    `);
  });
});
