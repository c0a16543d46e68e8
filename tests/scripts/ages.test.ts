import { describe, expect, it } from 'vitest';
import { compileChanged, replaced, type Change } from './fixtures/changed-lineage.ts';

async function compiled(changes: Record<string, Change> = {}) {
  return (await compileChanged(changes)).compiled!;
}

describe('ages', () => {
  it('keep the digits that the author wrote, or the chart’s own', async () => {
    const { horizons } = await compiled();
    expect(horizons.map(({ id, age }) => `${id} ${age.text} ${age.basis}`)).toEqual([
      'lower-shelf 34.0–32.0 bracketed',
      'upper-shelf 28.70–28.30 dated',
      // Base and top of the Langhian: International Chronostratigraphic Chart v2024/12.
      'gorse-clay 15.98–13.82 stage',
    ]);
  });

  it('of a date with one standard deviation reach two of them each way', async () => {
    const { horizons } = await compiled({ 'horizons.yaml': replaced('sigma: 2', 'sigma: 1') });
    expect(horizons[1]!.age).toMatchObject({ from: 28.9, to: 28.1, text: '28.90–28.10' });
  });

  it('of a taxon run from the oldest bed’s older end to the youngest bed’s younger end, on the weakest basis', async () => {
    const { taxa } = await compiled({
      'specimens.yaml': replaced(
        'horizon: lower-shelf\n  measurements',
        'horizon: gorse-clay\n  measurements',
      ),
    });
    expect(taxa[0]).toMatchObject({
      finds: { first: 34, last: 13.82, horizons: ['lower-shelf', 'gorse-clay'] },
      age: { basis: 'stage' },
    });
  });

  it('of a taxon are printed with the digits of its end beds, whatever a bed between them is dated to', async () => {
    const bed = (id: string) => `- { id: x-${id}, taxon: saltula-prima, horizon: ${id} }\n`;
    const { taxa } = await compiled({
      'horizons.yaml': (text) =>
        `${text.replace('stage: Langhian', 'from: 16.1, to: 14')}- { id: tuff, formation: Shelf, age: { date: 28.512, plusMinus: 0.004, sigma: 2 } }\n`,
      'specimens.yaml': (text) => text + bed('tuff') + bed('gorse-clay'),
    });
    expect(taxa[0]!.age!.text).toBe('34.0–14.0');
  });

  it('of a living taxon end today, and its mark stands there', async () => {
    const { taxa, traits } = await compiled();
    expect(taxa[5]).toMatchObject({ living: true, finds: { last: 0 }, age: { to: 0, basis: 'living' } });
    expect(traits[0]!.values[5]!.placedMa).toBe(0);
  });

  it('of a mark are the middle of the beds of the specimens that carry the trait', async () => {
    const { traits } = await compiled({
      'specimens.yaml': replaced(
        'horizon: lower-shelf\n  measurements',
        'horizon: upper-shelf\n  measurements',
      ),
    });
    expect(traits[0]!.values[0]!.placedMa).toBeCloseTo((33 + 28.5) / 2, 9);
  });

  it('take the chart’s names in Spanish and in either of its two orders', async () => {
    for (const name of ['Langhiense', 'langhian', 'Upper Cretaceous', 'Late Cretaceous']) {
      const { findings } = await compileChanged({ 'horizons.yaml': replaced('Langhian', name) });
      const known = findings.every(({ code }) => code !== 'unknown-stage');
      expect(`${name} ${known}`).toBe(`${name} true`);
    }
  });

  it('of the chart beside the lineage reach from its root to today, and name the chart', async () => {
    const { chart } = await compiled();
    expect(chart.version).toBe('v2024/12');
    const epochs = chart.units.filter(({ rank }) => rank === 'epoch').map(({ id }) => id);
    expect(epochs).toEqual(['holocene', 'pleistocene', 'pliocene', 'miocene', 'oligocene', 'eocene']);
  });
});

describe('trees', () => {
  it('carry taxon ids at their tips, forks numbered from the root, and the root at the age given', async () => {
    const { trees } = await compiled();
    const nodes = trees[0]!.nodes;
    expect(nodes.filter(({ taxon }) => taxon !== undefined)).toHaveLength(6);
    expect(nodes.find(({ parent }) => parent === null)).toEqual({ id: 'fork-1', parent: null, ageMa: 40 });
    const ages = new Map(nodes.map(({ id, ageMa }) => [id, ageMa]));
    for (const { parent, ageMa } of nodes)
      if (parent !== null) expect(ages.get(parent)!).toBeGreaterThanOrEqual(ageMa);
  });

  it('may name their tips by scientific name, with spaces or underscores', async () => {
    const newick =
      "((Saltula_prima,'Saltula brevis'),((collina-nana,Collina_media),(collina-longa,collina-vivens)));";
    const { trees } = await compiled({
      'lineage.yaml': (text) => text.replace(/newick: ".*"/, `newick: "${newick}"`),
    });
    const tips = trees[0]!.nodes.flatMap(({ taxon }) => taxon ?? []);
    expect(tips.sort()).toEqual([
      'collina-longa',
      'collina-media',
      'collina-nana',
      'collina-vivens',
      'saltula-brevis',
      'saltula-prima',
    ]);
  });

  // A TREES block with its table of translations: Maddison, Swofford and Maddison 1997, Systematic Biology 46: 590–621; names our own.
  it('may come from a NEXUS file with a table of translations, several trees and other blocks', async () => {
    const nexus = `#NEXUS
[written by hand]
BEGIN TAXA;
  DIMENSIONS NTAX=3;
  TAXLABELS Saltula_prima Collina_nana collina-vivens;
END;
BEGIN TREES;
  TRANSLATE
    1 Saltula_prima,
    2 Collina_nana,
    3 'collina-vivens';
  TREE first = [&R] ((1,2),3);
  TREE * second = [&R] (1,(2,3));
END;
`;
    const tips = async (name: string) => {
      const entry = `    file: trees.nex${name}\n`;
      const changes = {
        'lineage.yaml': (text: string) => text.replace(/ {4}newick: ".*"\n/, entry),
        'trees.nex': nexus,
      };
      const nodes = (await compiled(changes)).trees[0]!.nodes;
      const parentOf = (taxon: string) => nodes.find((node) => node.taxon === taxon)!.parent;
      return {
        tips: nodes.filter(({ taxon }) => taxon !== undefined).length,
        together: parentOf('collina-nana') === parentOf('collina-vivens'),
      };
    };
    expect(await tips('')).toEqual({ tips: 3, together: true });
    expect(await tips('\n    name: first')).toEqual({ tips: 3, together: false });
  });
});
