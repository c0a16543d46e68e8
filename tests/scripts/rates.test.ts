import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';

const { compiled } = await compileLineage(
  fileURLToPath(new URL('../../content/reed-trunks', import.meta.url)),
);
const [nasal, skull] = compiled!.traits;

test('a share has no rate in darwins, a length on log scale has', () => {
  expect(nasal!.rates).toBeUndefined();
  expect(skull!.rates!.pairs.length).toBeGreaterThan(5);
});

test('a rate is the difference of logarithms over the time that parts two relatives (Haldane 1949)', () => {
  const valueOf = (taxon: string) => skull!.values.find((value) => value.taxon === taxon)!.estimate!;
  for (const { one, other, pathMyr, darwins } of skull!.rates!.pairs)
    expect(darwins).toBeCloseTo(Math.abs(Math.log(valueOf(one) / valueOf(other))) / pathMyr, 9);
});

test('no animal stands in two pairs', () => {
  const taxa = skull!.rates!.pairs.flatMap(({ one, other }) => [one, other]);
  expect(new Set(taxa).size).toBe(taxa.length);
});
