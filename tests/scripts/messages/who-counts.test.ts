import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about who counts', () => {
  it('a cast has no original', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "5"\n',
          'catalogNumber: "5"\n  preparations: "cast of: hm-99"\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:35:17-33 error cast-alone
        the original of this cast is not recorded: "hm-99"
        record the original as a specimen of its own, or correct the id"
    `);
  });

  it('one catalogue number stands twice', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('catalogNumber: "2"', 'catalogNumber: "1"') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:14:18-21 error counted-twice
        "hm-1" has the same catalogue number: one animal would count twice
        keep one record for one animal, or correct the number"
    `);
  });

  it('a cast is of another taxon than its original', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "5"\n',
          'catalogNumber: "5"\n  preparations: "cast of: hm-1"\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:32:10-23 error counted-twice
        a cast of "hm-1", which is "saltula-prima": one animal would count in two taxa
        give cast and original the same taxon"
    `);
  });

  it('a composite is admitted to a ratio', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'catalogNumber: "2"\n',
          'catalogNumber: "2"\n  association: composite\n  admitted: { en: it fits }\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:15:16-25 error mixed-individuals
        "muzzle-share" is a ratio within one animal, and this is a composite
        remove admitted: lengths of several animals make no ratio"
    `);
  });

  it('a juvenile is admitted without a reason', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('lifeStage: juvenile', 'lifeStage: juvenile\n  admitted: true'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:49:13-17 error admitted-without-reason
        admitted is true, where a reason is meant
        say in each language why it counts: admitted: { en: … }"
    `);
  });

  it('a trait counts the young without a reason', async () => {
    expect(await findingsAfter({ 'traits.yaml': replaced('scale: plain', 'scale: plain\n  adults: all') }))
      .toMatchInlineSnapshot(`
      "traits.yaml:7:11-14 error admitted-without-reason
        "muzzle-share" counts young specimens without a reason
        say why under admits, or write adults: only"
    `);
  });
});
