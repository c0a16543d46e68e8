import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about traits', () => {
  it('a trait is of two kinds', async () => {
    expect(
      await findingsAfter({
        'traits.yaml': replaced('scale: plain', 'scale: plain\n  length: skull-length'),
      }),
    ).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 error trait-kind
        "muzzle-share" is not one kind of trait
        give exactly one of ratio, length, angle, count, or size with a list"
    `);
  });

  it('a logit trait has a value above one hundred', async () => {
    expect(
      await findingsAfter({
        'traits.yaml': replaced('scale: plain', 'scale: logit'),
        'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,72.4,70.2'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:31:7-11 error scale-outside
        "muzzle-share" is 103.1 in hm-5, and a logit scale needs more than 0 and less than 100
        look for a slip, or choose another scale for the trait"
    `);
  });

  it('no taxon has two specimens', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': (text) => text.replace(/- id: hm-2[\s\S]*?(?=- id: hm-3)/, ''),
      }),
    ).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 warning spread-missing
        no taxon has two specimens for "muzzle-share", so nothing says how much animals of one kind differ
        measure a second specimen of any taxon; until then intervals are missing, and inferred values are at best"
    `);
  });

  it('the spread grows with the mean', async () => {
    const taxa = ['saltula-prima', 'saltula-brevis', 'collina-nana', 'collina-media', 'collina-longa'];
    const shares = taxa.flatMap((taxon, index) =>
      [0.95, 1, 1.05].map((factor) => ({ taxon, share: 10 * (index + 1) * factor })),
    );
    const specimens = shares.map(
      ({ taxon }, index) =>
        `- { id: s-${index}, taxon: ${taxon}, horizon: ${taxon.startsWith('saltula') ? 'lower-shelf' : 'gorse-clay'} }\n`,
    );
    const rows = shares.map(({ share }, index) => `s-${index},${share},100\n`);
    const changes = {
      'specimens.yaml': specimens.join('') + '- { id: s-99, taxon: collina-dubia, horizon: gorse-clay }\n',
      'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${rows.join('')}`,
      'sheets/landmarks.csv': null,
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 warning spread-unequal
        the spread of "muzzle-share" grows with its mean
        consider scale: log, or say under why the plain scale is right"
    `);
  });

  it('nothing can be estimated where two exact taxa stand at one point of the tree', async () => {
    const newick =
      '((saltula-prima:0,saltula-brevis:0):0,((collina-nana:20,collina-media:20):5,(collina-longa:20,collina-vivens:35):5):0);';
    const changes = {
      'lineage.yaml': (text: string) =>
        text
          .replace(/newick: ".*"/, `newick: "${newick}"`)
          .replace('{ method: equal-share, root: 40 }', 'given'),
      'horizons.yaml': (text: string) =>
        text
          .replace('{ from: 34.0, to: 32.0 }', '{ from: 41, to: 39 }')
          .replace('{ date: 28.50, plusMinus: 0.20, sigma: 2 }', '{ from: 40.5, to: 39 }'),
      'specimens.yaml': (text: string) =>
        text
          .replace(/- id: hm-2[\s\S]*?(?=- id: hm-3)/, '')
          .replaceAll(/repeats: \[([\d.]+),[^\]]*\]/g, 'value: $1'),
      'sheets/landmarks.csv': (text: string) => text.replace(/hm-3,2.*\n/, ''),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "traits.yaml:2:7-19 warning cannot-estimate
        "muzzle-share" cannot be estimated on the tree "main": "saltula-prima" and "saltula-brevis" are exact and no time lies between them: at most one can be exact
        its missing values stay unknown until the records are corrected
      traits.yaml:2:7-19 warning spread-missing
        no taxon has two specimens for "muzzle-share", so nothing says how much animals of one kind differ
        measure a second specimen of any taxon; until then intervals are missing, and inferred values are at best"
    `);
  });

  describe('a change in time that cannot be told', () => {
    const oneAge = {
      'horizons.yaml':
        '- { id: lower-shelf, formation: Shelf, age: { from: 16.0, to: 14.0 }, sources: [hopper-notes] }\n' +
        '- { id: upper-shelf, formation: Shelf, bed: "4", age: { from: 16.0, to: 14.0 } }\n' +
        '- { id: gorse-clay, formation: Gorse Clay, age: { from: 16.0, to: 14.0 } }\n',
      'taxa.yaml': replaced(', living: true', ''),
      'specimens.yaml': (text: string) =>
        text.replaceAll(
          '  basisOfRecord: PreservedSpecimen\n  preparations: skeleton\n',
          '  horizon: gorse-clay\n',
        ),
    };
    const onThreeTips = {
      'lineage.yaml': (text: string) =>
        text.replace(/newick: ".*"/, 'newick: "((saltula-prima,collina-longa),collina-vivens);"'),
    };
    const equal = {
      'specimens.yaml': (text: string) =>
        text.replaceAll(/  (measurements|landmarks):[\s\S]*?(?=- id:)/g, ''),
      'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${['hm-1', 'hm-3', 'hm-4', 'hm-5', 'hm-6', 'hm-8'].map((id) => `${id},30,60`).join('\n')}\n`,
    };
    const untold = async (changes: Parameters<typeof findingsAfter>[0], checkOnly = false) =>
      (await findingsAfter(changes, { checkOnly }))
        .split(/\n(?=\S)/)
        .filter((finding) => / (trend-untold|cannot-estimate|rate-at-zero)/.test(finding))
        .join('\n');

    it('fewer than four animals of the tree are measured, and nobody asks relatives', async () => {
      expect(await untold(onThreeTips)).toMatchInlineSnapshot(`
        "traits.yaml:2:7-19 warning trend-untold
          whether "muzzle-share" rises or falls cannot be told on the tree "main": fewer than four of its animals are measured
          measure more animals of the tree; until then pages say that one cannot tell"
      `);
    });

    it('all measured animals are of one age', async () => {
      expect(await untold(oneAge)).toMatchInlineSnapshot(`
        "traits.yaml:2:7-19 warning trend-untold
          whether "muzzle-share" rises or falls cannot be told on the tree "main": all its measured animals are of one age
          look at the ages of their horizons, or measure an animal of another age; until then pages say that one cannot tell"
      `);
    });

    it('all measured values are the same', async () => {
      expect(await untold(equal)).toMatchInlineSnapshot(`
        "traits.yaml:2:7-19 warning trend-untold
          whether "muzzle-share" rises or falls cannot be told on the tree "main": all its measured values are the same
          look for a value that was entered more than once, or measure more animals; until then pages say that one cannot tell"
      `);
    });

    it('a check alone tells the same as a whole compile', async () => {
      for (const changes of [onThreeTips, oneAge, equal])
        expect(await untold(changes, true)).toBe(await untold(changes));
    });

    it('what the estimate has told is not told again', async () => {
      const tooFew = {
        'sheets/callipers.csv': (text: string) =>
          text.replace('hm-5,29.4,70.2\n', '').replace('hm-6,34.1,80.3\n', ''),
      };
      expect(await untold(tooFew)).toMatchInlineSnapshot(`
        "traits.yaml:2:7-19 warning cannot-estimate
          "muzzle-share" cannot be estimated on the tree "main": fewer than four of its animals are measured
          its missing values stay unknown until the records say more"
      `);
    });
  });
});
