import { describe, expect, it } from 'vitest';
import { isPlaceColumn, findCoordinates } from '../../../scripts/compile/check/place-words.ts';
import { added, compileChanged, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

const secret =
  '- { specimen: hm-3, decimalLatitude: 47.12345, decimalLongitude: -8.54321, landowner: Berta Stone }\n';
const note = (text: string) => replaced('stage: Langhian }', `stage: Langhian }, note: { en: "${text}" }`);

describe('messages about exact places', () => {
  it('coordinates stand in the note of a bed', async () => {
    expect(await findingsAfter({ 'horizons.yaml': note("at 47° 12' N") })).toMatchInlineSnapshot(`
      "horizons.yaml:4:82-96 error exact-place
        an exact place would be published from here
        move the coordinates to private.yaml, and name the district or county here"
    `);
  });

  it.each(['## Found at 47.12345, 8.54321', '<Aside>At 47.12345, 8.54321.</Aside>'])(
    'coordinates in %s are told once, as a place',
    async (prose) => {
      const findings = await findingsAfter({ 'story.en.mdx': added(`\n${prose}\n`) });
      expect(findings.match(/ error [a-z-]+/g)).toEqual([' error exact-place']);
    },
  );

  it('coordinates stand in a story', async () => {
    const findings = await findingsAfter({ 'story.en.mdx': added('\nIt lay at 47.12345, 8.54321.\n') });
    expect(findings).toMatchInlineSnapshot(`
      "story.en.mdx:11:11-28 error exact-place
        an exact place would be published from here
        move the coordinates to private.yaml, and name the district or county here"
    `);
  });

  it('coordinates stand in a reference', async () => {
    expect(await findingsAfter({ 'references.bib': replaced('Invented for tests', 'at 47.12345, 8.54321') }))
      .toMatchInlineSnapshot(`
      "references.bib:8:14-31 error exact-place
        an exact place would be published from here
        move the coordinates to private.yaml, and name the district or county here"
    `);
  });

  it('a table has a column of latitudes', async () => {
    const table =
      'specimen,muzzle-length (mm),skull-length (mm),decimalLatitude\nhm-5,29.4,70.2,47.1\nhm-6,34.1,80.3,\n';
    expect(await findingsAfter({ 'sheets/callipers.csv': table })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:47-62 error exact-place
        an exact place would be published from here
        move the coordinates to private.yaml, and name the district or county here"
    `);
  });

  it('coordinates that private.yaml keeps stand elsewhere, with fewer digits', async () => {
    expect(
      await findingsAfter({
        'private.yaml': secret,
        'horizons.yaml': note('48 m west of longitude 8.543 and latitude 47.123'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:4:125-131 error exact-place
        coordinates that private.yaml keeps would be published from here
        remove them, and name the district or county here"
    `);
  });

  it('a landowner is named in a story', async () => {
    expect(
      await findingsAfter({ 'private.yaml': secret, 'story.en.mdx': added('\nThe field of Berta Stone.\n') }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:11:14-25 error exact-place
        the name of a landowner, which private.yaml keeps, would be published from here
        remove the name"
    `);
  });

  it('private.yaml names an unknown specimen', async () => {
    expect(await findingsAfter({ 'private.yaml': '- { specimen: hm-33 }\n' })).toMatchInlineSnapshot(`
      "private.yaml:1:15-20 error unknown-id
        unknown specimen: "hm-33"; did you mean "hm-3"?
        name one of specimens.yaml, or add it there"
    `);
  });
});

describe('private.yaml', () => {
  it('changes nothing that is compiled, and no digest', async () => {
    const [without, withIt] = [await compileChanged(), await compileChanged({ 'private.yaml': secret })];
    expect(withIt.findings).toEqual(without.findings);
    expect(withIt.compiled).toEqual(without.compiled);
  });
});

describe('findCoordinates', () => {
  // Degrees and decimals in the ways of ISO 6709:2022, annex D, and of the UTM grid; the forms from memory.
  it.each([
    '50°40′46″N 95°48′26″W',
    '50.6794° N',
    '47.12345, 8.54321',
    '-33.9249; 18.4241',
    '33T 0412345 4987654',
  ])('finds %s', (text) => {
    expect(findCoordinates(`found at ${text} in May`)).toMatchObject({ start: 9 });
  });

  // Landmarks, ratios and identifiers that look a little alike.
  it.each([
    '[[12.4, 88.0], [11.8, 92.5]]',
    'turned by 12° to the left',
    'doi 10.1234/12.345',
    '240.1, 240.3',
  ])('leaves %s alone', (text) => {
    expect(findCoordinates(text)).toBeUndefined();
  });

  it.each([
    ['decimalLatitude', true],
    ['Lat', true],
    ['UTM East', true],
    ['verbatimCoordinates', true],
    ['Long', false],
    ['longitud del cráneo', false],
    ['lateral width', false],
  ])('takes a column called %s for a place: %s', (header, place) => {
    expect(isPlaceColumn(header)).toBe(place);
  });
});
