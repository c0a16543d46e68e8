import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about casts', () => {
  const castOf = (original: string, more = '') =>
    added(`- { id: hm-10, taxon: saltula-prima, preparations: "cast of: ${original}"${more} }\n`);

  it('a cast is of itself', async () => {
    expect(await findingsAfter({ 'specimens.yaml': castOf('hm-10') })).toMatchInlineSnapshot(`
      "specimens.yaml:59:52-68 error cast-alone
        this is a cast of itself
        name the original"
    `);
  });

  it('a cast is of another cast', async () => {
    const changes = {
      'specimens.yaml': (text: string) =>
        castOf('hm-1')(text) + '- { id: hm-11, taxon: saltula-prima, preparations: "cast of: hm-10" }\n',
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "specimens.yaml:60:52-68 error cast-alone
        "hm-10" is itself a cast
        name the original of both: "cast of: hm-1""
    `);
  });

  it('a cast is of another bed than its original', async () => {
    expect(await findingsAfter({ 'specimens.yaml': castOf('hm-1', ', horizon: upper-shelf') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:59:78-89 error counted-twice
        a cast of "hm-1", which is from "lower-shelf": one animal would lie in two beds
        leave the horizon off the cast, or correct one of the two"
    `);
  });
});

describe('messages about traits that cannot be', () => {
  const ratio = 'ratio: { part: muzzle-length, whole: skull-length, unit: percent }';

  it('a length is taken for an angle', async () => {
    expect(await findingsAfter({ 'traits.yaml': replaced(ratio, 'angle: muzzle-length') }))
      .toMatchInlineSnapshot(`
      "traits.yaml:5:10-23 error trait-kind
        "muzzle-length" is a length, where an angle is meant
        name a measurement that is an angle, or make this another kind of trait"
    `);
  });

  it('a ratio is of one length to itself', async () => {
    expect(await findingsAfter({ 'traits.yaml': replaced('whole: skull-length', 'whole: muzzle-length') }))
      .toMatchInlineSnapshot(`
      "traits.yaml:5:40-53 error trait-kind
        the part and the whole are both "muzzle-length": the ratio is always the same
        name two measurements"
    `);
  });

  it('a size is a count', async () => {
    const changes = {
      'scheme.yaml': added('  - { id: teeth, count: { en: teeth } }\n'),
      'traits.yaml': added('  size: teeth\n'),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "traits.yaml:9:9-14 error trait-kind
        "teeth" is a count, where a length is meant
        name a measurement that is a length, or make this another kind of trait"
    `);
  });
});

describe('messages about taxa', () => {
  it('two taxa have one name', async () => {
    expect(await findingsAfter({ 'taxa.yaml': replaced('Collina dubia', 'Collina nana') }))
      .toMatchInlineSnapshot(`
      "taxa.yaml:8:40-52 error duplicate-id
        "Collina nana" is also the name of "collina-nana"
        correct one of the two names, or keep one record"
    `);
  });

  it('an age that is given has no source', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced('Saltula brevis,', 'Saltula brevis, age: { from: 29, to: 28 },'),
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:3:62-82 warning source-missing
        the age of "saltula-brevis" has no source
        name under sources who says so, or remove the age: it is worked out from the finds"
    `);
  });

  it('a name is in press', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced('Collina dubia', 'Collina dubia, nomenclature: in-press'),
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:8:69-77 error informal-name
        "Collina dubia" is in press, not published
        publish the name first: a name on a public page can be taken for its publication; a preview shows it"
    `);
  });
});

describe('messages about editions and languages', () => {
  const edition = (fields: string) =>
    findingsAfter({
      'lineage.yaml': replaced('editions:\n', `editions:\n  - { ${fields}, status: draft }\n`),
    });

  it('an edition is given twice', async () => {
    expect(await edition('number: 1, date: 2026-11-25')).toMatchInlineSnapshot(`
      "lineage.yaml:14:15-16 error duplicate-id
        the edition 1 is given twice
        number editions in the order in which they came out"
    `);
  });

  it('a later edition has an earlier day', async () => {
    expect(await edition('number: 2, date: 2026-01-01')).toMatchInlineSnapshot(`
      "lineage.yaml:13:24-34 error wrong-value
        edition 2 is of 2026-01-01, and edition 1 of 2026-11-25
        a later edition has a later number: correct a day or a number"
    `);
  });

  it('a day is in no calendar', async () => {
    expect(await edition('number: 2, date: 2027-02-29')).toMatchInlineSnapshot(`
      "lineage.yaml:13:24-34 error wrong-value
        editions.0.date "2027-02-29" is no day
        write year-month-day: 2026-11-25"
    `);
  });

  it('a language is a word', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('languages: [en]', 'languages: [english]') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:5:13-20 error wrong-value
        languages.0 "english" is no language tag
        write two or three small letters, such as en, es or pt-BR"
    `);
  });

  it('a language is listed twice', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('languages: [en]', 'languages: [en, en]') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:5:17-19 error duplicate-id
        the language "en" is listed twice
        remove it once"
    `);
  });

  it('a key belongs elsewhere', async () => {
    expect(await findingsAfter({ 'lineage.yaml': added('horizon: lower-shelf\n') })).toMatchInlineSnapshot(`
      "lineage.yaml:16:1-8 error unknown-key
        unknown key "horizon"
        it belongs to another record or another level of this one: move it there, or look at how far it is indented"
    `);
  });
});

describe('messages about pairs of landmarks', () => {
  const landmark = (fields: string) => `  - { id: tooth-rear, ${fields},`;

  it('a pair is named at one end only', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced(
          landmark('name: { en: rear of the tooth row }'),
          landmark('pair: tooth-front, name: { en: rear of the tooth row }'),
        ),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:11:29-40 error pair-broken
        "tooth-rear" is paired with "tooth-front", which names no pair
        write pair: tooth-rear at "tooth-front", or remove the pair here"
    `);
  });

  it('nothing says which of a pair is left', async () => {
    const changes = {
      'scheme.yaml': (text: string) =>
        text
          .replace('id: tooth-rear,', 'id: tooth-rear, pair: tooth-front, side: left,')
          .replace('id: tooth-front,', 'id: tooth-front, pair: tooth-rear,'),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "scheme.yaml:10:30-40 error pair-broken
        the pair of "tooth-front" and "tooth-rear" is not one left and one right
        write side: left at one and side: right at the other"
    `);
  });
});

it('repeats are spoken of where there is one value', async () => {
  expect(
    await findingsAfter({
      'specimens.yaml': replaced('value: 61, unit: mm', 'value: 61, unit: mm, repeatOf: new-session'),
    }),
  ).toMatchInlineSnapshot(`
    "specimens.yaml:18:52-63 error no-value
      repeatOf says what changed between repeats, and there is one value
      give repeats: [ … ], or remove repeatOf"
  `);
});
