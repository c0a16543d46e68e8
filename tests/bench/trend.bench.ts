import { expect, test } from 'vitest';
import type { DatedHypothesis, Observation } from '../../analysis/estimate/index.ts';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { kendallOnTree, trendSigns, trendsOn, verdictOf } from '../../analysis/trend/index.ts';
import { dateTree, parseNewick, type TipAges } from '../../analysis/tree/index.ts';

const names = Array.from({ length: 24 }, (_, k) => `t${k}`);
const rootAgeMa = 60;

/** A comb of 24 tips in a shuffled order, so that three of them are three trees. */
function comb(seed: number): string {
  const random = seededRandom('comb', seed);
  const order = names.map((name) => ({ name, at: random() })).sort((a, b) => a.at - b.at);
  return `${order.reduceRight((inner, { name }) => (inner === '' ? name : `(${name},${inner})`), '')};`;
}

const tipAgesOfDraw = (draw: number): TipAges => {
  const random = seededRandom('ages', draw);
  return new Map(names.map((name, k) => [name, k < 2 ? 0 : 50 - 2 * k + 2 * random()]));
};

const hypotheses = [1, 2, 3].flatMap((seed): DatedHypothesis[] => {
  const tree = parseNewick(comb(seed));
  return [
    { id: `comb ${seed}`, tree, dating: { rule: 'equal-share', rootAgeMa } },
    { id: `comb ${seed}`, tree, dating: { rule: 'minimum-branch', minimumMa: 0.5, rootAgeMa } },
  ];
});

test(
  'the trend of 24 taxa on 3 trees and 2 rules of dating, with 200 sets of ages',
  { timeout: 600_000 },
  () => {
    const random = seededRandom('values');
    const observations = names.map((taxon): Observation => ({
      taxon,
      mean: normalDraw(random),
      variance: 0.05,
    }));
    const times = Array.from({ length: 5 }, () => {
      const start = performance.now();
      const dated = hypotheses.map(({ id, tree, dating }) => ({
        id,
        tree: dateTree(tree, dating, tipAgesOfDraw(0)),
      }));
      const verdict = verdictOf(trendsOn(dated, observations));
      const signs = hypotheses.map((hypothesis) =>
        trendSigns({ hypothesis, observations, tipAgesOfDraw, draws: 201 }),
      );
      kendallOnTree({ tree: dated[0]!.tree, observations, rate: 0.1, draws: 999, seed: 1 });
      expect(signs.every(({ datings }) => datings > 0)).toBe(true);
      expect(['rises', 'falls', 'cannot-tell']).toContain(verdict);
      return performance.now() - start;
    }).sort((a, b) => a - b);
    console.log(
      `24 taxa, 3 trees, 2 rules, 201 sets of ages, ranks by 999 simulations: ${times[2]!.toFixed(0)} ms median of 5 (${times[0]!.toFixed(0)} to ${times[4]!.toFixed(0)})`,
    );
  },
);
