import { describe, expect, it } from 'vitest';
import { added, compileChanged, replaced, type Change } from '../fixtures/changed-lineage.ts';

async function compiled(changes: Record<string, Change> = {}) {
  const { compiled: lineage, findings } = await compileChanged(changes);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return lineage!;
}

const skullLength: Record<string, Change> = {
  'traits.yaml': added(
    '- { id: skull-size, label: { en: Skull length }, meaning: { en: length of the skull }, length: skull-length }\n',
  ),
};

/** A second specimen of a taxon in an older bed, which yields the length of the skull and not the share. */
const olderSkull: Record<string, Change> = {
  ...skullLength,
  'specimens.yaml': added('- { id: hm-10, taxon: collina-nana, horizon: upper-shelf }\n'),
  'sheets/callipers.csv': added('hm-10,,66.2\n'),
};

describe('a trait that another bed carries', () => {
  it('places its tip at the beds of its own specimens, and dates its own trees by that', async () => {
    const { trees, traits } = await compiled(olderSkull);
    const tip = trees[0]!.nodes.findIndex(({ taxon }) => taxon === 'collina-nana');
    const langhianMiddleMa = (15.98 + 13.82) / 2; // chart v2024/12
    expect(trees[0]!.nodes[tip]!.ageMa).toBeCloseTo(langhianMiddleMa, 9);
    expect(traits[0]!.ages).toBeUndefined();
    expect(traits[1]!.ages![0]!.tree).toBe('main');
    expect(traits[1]!.ages![0]!.ageMa[tip]).toBeCloseTo((langhianMiddleMa + 28.5) / 2, 9);
    expect(traits[1]!.ages![0]!.ageMa).toHaveLength(trees[0]!.nodes.length);
  });

  it('leaves the values of the trait in view as they were, to every digit', async () => {
    const [before, after] = [await compiled(skullLength), await compiled(olderSkull)];
    expect(after.traits[0]!.nodes).toEqual(before.traits[0]!.nodes);
    expect(after.traits[1]!.nodes).not.toEqual(before.traits[1]!.nodes);
  });

  it('shares the trees in view where its specimens come from the same beds', async () => {
    const { traits } = await compiled(skullLength);
    expect(traits[1]!.ages).toBeUndefined();
  });

  it('is an error where its bed is older than the root, told for the tree', async () => {
    const { findings, compiled: lineage } = await compileChanged({
      ...olderSkull,
      'horizons.yaml': added('- { id: deep-shelf, formation: Shelf, age: { from: 90, to: 88 } }\n'),
      'specimens.yaml': added('- { id: hm-10, taxon: collina-nana, horizon: deep-shelf }\n'),
    });
    expect(lineage).toBeUndefined();
    expect(findings.filter(({ severity }) => severity === 'error')).toMatchObject([{ code: 'tree-age' }]);
  });
});

describe('a last find', () => {
  it('has the limit of Strauss and Sadler 1989, equation 20, from its beds and the range between them', async () => {
    const { taxa } = await compiled({
      'specimens.yaml': added(
        '- { id: hm-10, taxon: saltula-brevis, horizon: lower-shelf }\n- { id: hm-11, taxon: saltula-brevis, horizon: gorse-clay }\n',
      ),
    });
    const { first, last, horizons, lastLimit } = taxa[1]!.finds;
    expect([first, last, horizons.length]).toEqual([34, 13.82, 3]);
    // three beds, one end, 95%: 3.472135954999578 times the range, past the present
    expect(lastLimit).toEqual({ youngestMa: 0, level: 0.95 });
  });

  it('of many beds close together stays short of the present, and of one bed has no limit', async () => {
    const beds = Array.from({ length: 7 }, (_, bed) => `brook-${bed}`);
    const { taxa } = await compiled({
      'horizons.yaml': added(
        beds
          .map(
            (id, bed) =>
              `- { id: ${id}, formation: Brook, age: { from: ${29 + bed / 2}, to: ${28.6 + bed / 2} } }\n`,
          )
          .join(''),
      ),
      'specimens.yaml': added(
        beds.map((bed, index) => `- { id: hm-2${index}, taxon: saltula-brevis, horizon: ${bed} }\n`).join(''),
      ),
    });
    const { first, last, lastLimit } = taxa[1]!.finds;
    // eight beds, one end, 95%: 0.5341274046343907 of the range
    expect(lastLimit!.youngestMa).toBeCloseTo(last! - 0.5341274046343907 * (first! - last!), 9);
    expect(taxa[2]!.finds.lastLimit).toBeUndefined();
  });
});

describe('the order of beds', () => {
  it('is known where one lies over the other, and else as likely as their ages make it', async () => {
    const { bedOrder } = await compiled();
    expect(bedOrder).toEqual([
      { older: 'lower-shelf', younger: 'upper-shelf', known: true, probability: 1 },
      { older: 'upper-shelf', younger: 'gorse-clay', known: true, probability: 1 },
    ]);
    const free = await compiled({
      'horizons.yaml': (text) =>
        text
          .replace(', above: lower-shelf', '')
          .replace('above: [upper-shelf]', '')
          .replace('from: 34.0, to: 32.0', 'from: 29.0, to: 28.0')
          .replace('stage: Langhian }, ', 'from: 29.0, to: 28.2 }'),
    });
    const two = free.bedOrder.find(({ older }) => older === 'gorse-clay')!;
    // a uniform age of 28.2 to 29.0 against one of 28.0 to 29.0: (0.2 + 1.0) / 2, by area
    expect(free.bedOrder[0]).toMatchObject({ older: 'gorse-clay' });
    expect(two.known).toBe(false);
    expect(two).toMatchObject({ younger: 'lower-shelf' });
    expect(two.probability).toBeCloseTo(0.6, 9);
  });
});

describe('repeats', () => {
  it('give measurement error by how the trait was read, with its share in percent', async () => {
    const { traits } = await compiled();
    const callipers = traits[0]!.repeats.filter(({ from }) => from === 'callipers');
    expect(callipers.map(({ measurement }) => measurement)).toEqual(['muzzle-length', 'skull-length']);
    // 20.1, 20.3, 20.2 vary by 0.01 about their mean
    expect(callipers[0]!.within).toBeCloseTo(0.01, 12);
    expect(callipers[0]!.df).toBe(2);
    expect(traits[0]!.repeats.find(({ from }) => from === 'landmarks')).toMatchObject({
      specimens: 1,
      df: 1,
    });
  });

  it('are left out where nothing was read again', async () => {
    const { traits } = await compiled({
      'specimens.yaml': (text) => text.replaceAll(/repeats: \[([\d.]+)[^\]]*\]/g, 'value: $1'),
      'sheets/landmarks.csv': replaced('hm-3,2,0,1,207,-61,602,-10,80,20,281,20\n', ''),
    });
    expect(traits[0]!.repeats).toEqual([]);
  });
});
