import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { lineageView } from '../../../components/lineage/view.ts';
import { voiceOf } from '../../../components/messages/say.ts';
import { valueText } from '../../../components/messages/value-text.ts';
import { findLiveData } from '../../../components/take-away/find-live-data.ts';
import { estimateWithout, findMiss } from '../../../components/take-away/recompute.ts';
import { relativesValue } from '../../../components/take-away/relatives-value.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

const folder = fileURLToPath(new URL('../../../content/reed-trunks', import.meta.url));
const { compiled } = await compileLineage(folder);
const lineage = compiled!;
const view = lineageView(lineage, 'en');
const live = findLiveData(view)!;
const { trait } = view;
const voice = voiceOf('en');
const print = (each: Parameters<typeof relativesValue>[0]) => valueText(relativesValue(each), voice).printed;
const unseen = (...taxa: string[]) => estimateWithout(live, new Set(taxa))!;

describe('the data block of the bundled lineage', () => {
  test('says its version and holds every animal of the tree', () => {
    expect(live.schema).toBe('lineament.live/1');
    const tips = live.tree.taxon.filter(Boolean);
    expect([...live.measured.taxon, ...live.unmeasured].sort()).toEqual(tips.sort());
  });

  test('is under 6 KB with gzip', () => {
    expect(gzipSync(JSON.stringify(live)).length).toBeLessThan(6 * 1024);
  });

  test('survives being written and read', () => {
    expect(JSON.parse(JSON.stringify(live))).toEqual(live);
  });

  test('hangs the limit of the broken skull by the spread within an animal and the error of its reading', () => {
    const { limits } = trait.values.find(({ status }) => status === 'bounded')!;
    const { twig, atLeast } = live.limits[0]!;
    expect(twig).toBeCloseTo(trait.pooled!.variance + limits!.bare!.error ** 2, 9);
    expect(atLeast).toBe(limits!.bare!.atLeast);
    // 1.96: the two-sided 95% quantile of the normal distribution, from memory; the limit is printed in tenths.
    const safe = limits!.bare!.atLeast! - 1.96 * limits!.bare!.error;
    expect(limits!.atLeast!).toBeLessThanOrEqual(safe);
    expect(limits!.atLeast!).toBeGreaterThan(safe - 0.1001);
  });
});

describe('an animal hidden alone', () => {
  test.each(trait.leaveOneOut)('$taxon is estimated as the compiler left it out', (leftOut) => {
    const again = unseen(leftOut.taxon).get(leftOut.taxon)!;
    expect(print(again)).toBe(print(leftOut));
    expect(again.median).toBeCloseTo(leftOut.median, 6);
    expect(again.interval[0]).toBeCloseTo(leftOut.interval[0]!, 6);
    expect(again.interval[1]).toBeCloseTo(leftOut.interval[1]!, 6);
    expect(again.open).toBe(false);
  });

  test.each(trait.leaveOneOut)('$taxon is missed by as much as is compiled', (leftOut) => {
    const miss = findMiss(live, new Set(), leftOut.taxon)!;
    expect(miss.observed - miss.median).toBeCloseTo(leftOut.miss, 6);
    expect(miss.inside).toBe(leftOut.inside);
  });
});

describe('what relatives say with skulls hidden', () => {
  test('is what is compiled when none is hidden', () => {
    for (const value of trait.values.filter(({ status }) => status === 'inferred')) {
      const again = unseen().get(value.taxon)!;
      expect(print(again)).toBe(print({ ...value, median: value.estimate! }));
      expect(again.relatives[0]!.weight).toBeCloseTo(value.relatives![0]!.weight, 6);
    }
    const bounded = trait.values.find(({ conditional }) => conditional)!;
    expect(unseen().get(bounded.taxon)!.median).toBeCloseTo(bounded.conditional!.median, 6);
  });

  test('rests on none that is hidden, and its weights add up to one', () => {
    const hidden = ['riparhina-tenuis', 'calathorhina-gemina'];
    for (const { relatives } of unseen(...hidden).values()) {
      expect(relatives.map(({ taxon }) => taxon)).not.toEqual(expect.arrayContaining(hidden));
      expect(relatives.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
    }
  });

  test('is less sure when the nearest relative is hidden too', () => {
    const width = ([low, high]: readonly [number, number]) => high - low;
    const alone = unseen('riparhina-dura').get('riparhina-dura')!;
    const both = unseen('riparhina-dura', 'riparhina-tenuis').get('riparhina-dura')!;
    expect(width(both.interval)).toBeGreaterThan(width(alone.interval));
  });

  test('does not depend on the order in which skulls were hidden', () => {
    const [one, other] = ['palustrina-prior', 'meridorhina-alta'];
    expect(unseen(one!, other!)).toEqual(unseen(other!, one!));
  });

  test('is nothing when too few are left to estimate from', () => {
    const all = live.measured.taxon;
    expect(estimateWithout(live, new Set(all.slice(4)))).toBeUndefined();
    expect(findMiss(live, new Set(all.slice(5)), all[0]!)).toBeUndefined();
    expect(estimateWithout(live, new Set(all))).toBeUndefined();
  });

  test('is finite for every pair of hidden neighbours', () => {
    live.measured.taxon.slice(1).forEach((taxon, index) => {
      for (const { median, interval } of unseen(taxon, live.measured.taxon[index]!).values())
        expect([median, ...interval].every(Number.isFinite)).toBe(true);
    });
  });
});

describe('a page whose records do not give the compiled numbers back', () => {
  const changed = (change: (trait: typeof view.trait) => void) => {
    const other = structuredClone(lineage);
    change(other.traits.find(({ id }) => id === trait.id)!);
    return findLiveData(lineageView(other, 'en'));
  };

  test('offers no live numbers where leave-one-out differs in a printed digit', () => {
    expect(changed((each) => (each.leaveOneOut[3]!.median += 1))).toBeUndefined();
  });

  test('offers none where nothing was estimated', () => {
    expect(changed((each) => (each.model = null))).toBeUndefined();
    expect(changed((each) => (each.leaveOneOut = []))).toBeUndefined();
  });
});

test('a trait on a scale of logarithms, with several broken skulls, comes back in its own unit and tree', () => {
  const sizes = lineage.traits.find(({ scale }) => scale === 'log')!;
  const block = findLiveData({ ...view, trait: sizes })!;
  expect(block.limits).toHaveLength(2);
  for (const leftOut of sizes.leaveOneOut) {
    const again = estimateWithout(block, new Set([leftOut.taxon]))!.get(leftOut.taxon)!;
    expect(again.median / leftOut.median).toBeCloseTo(1, 8);
    expect(print(again)).toBe(print(leftOut));
  }
});
