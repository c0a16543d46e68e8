import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about landmarks and breaks', () => {
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
        "eye-front" at 205, -60 and 3 more points of hm-3 lie outside their picture of 500 × 300
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

  it('relatives find a limit very improbable', async () => {
    const broken =
      '- id: hm-10\n  taxon: collina-media\n  horizon: gorse-clay\n  lost: [{ landmark: snout-tip }]\n  measurements:\n    muzzle-length: { value: 58, unit: mm, toBreak: snout-tip }\n    skull-length: { value: 60, unit: mm, toBreak: snout-tip }\n';
    expect(await findingsAfter({ 'specimens.yaml': added(broken) })).toMatchInlineSnapshot(`
      "specimens.yaml:62:9-34 warning limit-improbable
        relatives find the limit of "hm-10" very improbable (2e-5)
        look again at the break, the identification and the axis; if all are right, it stands: pages show both"
    `);
  });
});
