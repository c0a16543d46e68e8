import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about ages', () => {
  it('the ends of an age are swapped', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': replaced('{ from: 34.0, to: 32.0 }', '{ from: 32.0, to: 34.0 }'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:53-57 error age-reversed
        from 32 Ma is younger than to 34 Ma
        from is the older end, to the younger: swap them"
    `);
  });

  it('an age lies in the future', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': replaced('{ from: 34.0, to: 32.0 }', '{ from: 34.0, to: -2 }'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:63-65 error age-in-future
        -2 Ma lies in the future
        give the age in millions of years ago, without a sign"
    `);
  });

  it('an age lies outside its stage', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': replaced('{ from: 34.0, to: 32.0 }', '{ from: 34.0, to: 32.0, stage: Chattian }'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:76-84 error age-outside-stage
        34.0–32.0 Ma lies outside the Chattian, 27.3–23.04 Ma
        correct the age or the stage; the chart’s boundaries move between editions"
    `);
  });

  it('nothing says when a taxon lived', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('  horizon: upper-shelf\n  landmarks', '  landmarks'),
      }),
    ).toMatchInlineSnapshot(`
      "taxa.yaml:3:9-23 error age-missing
        nothing says when "saltula-brevis" lived
        give its specimens a horizon, say living: true, or give an age with its source"
    `);
  });

  it('a find lies outside the range given for its taxon', async () => {
    expect(
      await findingsAfter({
        'taxa.yaml': replaced(
          'scientificName: Saltula brevis,',
          'scientificName: Saltula brevis, age: { from: 20, to: 18 }, sources: [hopper-notes],',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:23:12-23 error find-outside-range
        this find is 28.70–28.30 Ma old, outside the 20–18 Ma given for "saltula-brevis"
        correct the horizon or the identification, or remove the age of the taxon: it is worked out from the finds"
    `);
  });

  it('a bed lies above a younger one', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': (text) =>
          text.replace('above: lower-shelf', 'above: gorse-clay').replace(', above: [upper-shelf]', ''),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:3:106-116 error superposition
        "upper-shelf" (28.70–28.30 Ma) lies above "gorse-clay" (15.98–13.82 Ma), which is not older
        correct one of the two ages, or the order of the beds"
    `);
  });

  it('a bed lies above itself', async () => {
    expect(
      await findingsAfter({
        'horizons.yaml': (text) => text.replace('to: 32.0 },', 'to: 32.0 }, above: gorse-clay,'),
      }),
    ).toMatchInlineSnapshot(`
      "horizons.yaml:2:78-88 error superposition
        "lower-shelf" (34.0–32.0 Ma) lies above "gorse-clay" (15.98–13.82 Ma), which is not older
        correct one of the two ages, or the order of the beds
      horizons.yaml:2:78-88 error superposition
        "lower-shelf" lies above itself, by way of gorse-clay, upper-shelf, lower-shelf
        correct the order of the beds"
    `);
  });
});
