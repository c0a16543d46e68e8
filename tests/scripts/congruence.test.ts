import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';

const compile = (folder: string) => compileLineage(fileURLToPath(new URL(folder, import.meta.url)));
const { compiled } = await compile('../../content/reed-trunks');

test('every ghost is a branch of the reference tree that was to be found longer than it was', () => {
  const tree = compiled!.trees.find(({ reference }) => reference)!;
  const nodes = new Map(tree.nodes.map((node) => [node.id, node]));
  expect(compiled!.ghosts.length).toBeGreaterThan(5);
  for (const { node, taxon, fromMa, toMa } of compiled!.ghosts) {
    expect(nodes.get(node)?.taxon).toBe(taxon);
    expect(fromMa).toBeGreaterThan(toMa);
    if (taxon) expect(compiled!.taxa.find(({ id }) => id === taxon)!.finds.first).toBe(toMa);
  }
});

test('the outgroup was to be found since the oldest find of the others', () => {
  // common practice, no source: two nearest relatives parted before the older of them was found
  expect(compiled!.ghosts[0]).toMatchObject({ fromMa: 52 });
});

test('each tree has indices, its ghosts add up to its gap, and deals are the same for the same seed', async () => {
  const { congruence, ghosts } = compiled!;
  expect(congruence.map(({ tree }) => tree)).toEqual(compiled!.trees.map(({ id }) => id));
  const sum = ghosts.reduce((total, { fromMa, toMa }) => total + fromMa - toMa, 0);
  expect(congruence[0]!.gapMyr).toBeCloseTo(sum, 9);
  for (const each of congruence) {
    expect(each.consistency).toBeGreaterThanOrEqual(0);
    expect(each.gapExcessRatio).toBeLessThanOrEqual(1);
    expect(each.permutations!.draws).toBe(999);
    expect(each.permutations!.pValue).toBeGreaterThan(0);
  }
  expect((await compile('../../content/reed-trunks')).compiled!.congruence).toEqual(congruence);
});
