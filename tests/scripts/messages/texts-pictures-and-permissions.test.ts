import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about texts, pictures and permissions', () => {
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

  const picture = (rights: string) => ({
    'specimens.yaml': replaced(
      'catalogNumber: "3"\n',
      `catalogNumber: "3"\n  pictures: [{ file: images/a.svg, alt: { en: a skull }, rights: { image: Bo Heath, licence: CC0-1.0, ${rights} } }]\n`,
    ),
    'images/a.svg': '<svg viewBox="0 0 1 1"/>',
  });
  const shownIn = (venues: string, more = '') => ({
    'lineage.yaml': replaced('licence: CC0-1.0', `licence: CC0-1.0\nvenues: [${venues}]${more}`),
  });

  it('a picture may not be shown where the lineage is to be shown', async () => {
    const changes = { ...picture('venues: [pages, print]'), ...shownIn('pages, gallery, print') };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "specimens.yaml:23:22-34 error permission
        "images/a.svg" may be shown in pages, print, not in a gallery
        ask for permission, take the picture off the list, or take the venue off venues in lineage.yaml"
    `);
    expect(await findingsAfter(changes, { preview: true })).toBe('');
  });

  it('a venue is misspelt', async () => {
    expect(await findingsAfter(shownIn('pages, galery'))).toMatchInlineSnapshot(`
      "lineage.yaml:16:17-23 error wrong-value
        unknown venues.1: "galery"; did you mean "gallery"?
        choose one of: pages, gallery, class, print"
    `);
  });

  it('sensitive material is to be shown in a class', async () => {
    expect(await findingsAfter(shownIn('pages, class', '\nsensitive: [human-remains]')))
      .toMatchInlineSnapshot(`
      "lineage.yaml:16:17-22 error permission
        this lineage is marked human-remains, and is to be shown in a class
        take the venue off the list; what may be shown there is for the communities concerned to say"
    `);
  });

  it('a picture is under embargo', async () => {
    expect(await findingsAfter(picture('embargo: 2027-01-01'))).toMatchInlineSnapshot(`
      "specimens.yaml:23:112-122 error embargo
        "hm-3" is under embargo until 2027-01-01
        wait, or build a preview"
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
