import { tieCounts, tiedVariance } from '../../analysis/trend/kendall.ts';
import { normalUpperTail } from '../../analysis/statistics/index.ts';
import { kendallTest, spearmanTest } from '../../analysis/trend/index.ts';
import { holdToAccount, type Part } from './account.ts';
import known from './values/rank-tests.json' with { type: 'json' };

interface Pairs {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Probability of so low a rank correlation or lower: that of so high a one with one list turned round. */
function pLess({ x, y }: Pairs): number {
  return spearmanTest(
    x.map((value) => -value),
    y,
  ).pGreater;
}

function byOrders(pairs: Pairs) {
  const [kendall, spearman] = [kendallTest(pairs.x, pairs.y), spearmanTest(pairs.x, pairs.y)];
  return {
    k: { S: kendall.statistic, p_two: kendall.pTwoSided, p_greater: kendall.pGreater },
    s: {
      rho: spearman.coefficient,
      p_two: spearman.pTwoSided,
      p_greater: spearman.pGreater,
      p_less: pLess(pairs),
    },
  };
}

/** Concordant pairs, by the statistic and the number of pairs that are not tied. */
function concordant({ x, y }: Pairs): number {
  return (kendallTest(x, y).statistic + (x.length * (x.length - 1)) / 2) / 2;
}

const sinceThen: Pairs = { x: known.n7.ages.map((age) => -age), y: known.n7.y };

/** Every tail of one table, each by the test of an order that has its sum. */
function kendallNull({ n, upperTail }: (typeof known.kendallNull)[number]): Part {
  const rising = Array.from({ length: n }, (_, k) => k);
  const most = kendallTest(rising, rising).statistic;
  return {
    n,
    maxS: most,
    upperTail: upperTail.map(({ S }) => {
      const order = orderWith(n, (most - S) / 2);
      const { statistic, pGreater, pTwoSided } = kendallTest(rising, order);
      return { S: statistic, p_one: pGreater, p_two: pTwoSided };
    }),
  };
}

/** An order of n values with so many discordant pairs: each value in turn is put before as many smaller ones as are wanted. */
function orderWith(n: number, discordant: number): number[] {
  const order: number[] = [];
  let left = discordant;
  for (let value = 0; value < n; value++) {
    const taken = Math.min(value, left);
    left -= taken;
    order.splice(order.length - taken, 0, value);
  }
  return order;
}

/** Every tail of one table by the test of an order that has its sum of squares; how many have it is counted over all. */
function spearmanNull({ n, D }: (typeof known.spearmanNull_D2)[number]): Part {
  const all = allOrders(n);
  const bySum = new Map<number, { order: readonly number[]; count: number }>();
  for (const order of all) {
    const sum = order.reduce((total, value, k) => total + (value - k) ** 2, 0);
    const seen = bySum.get(sum);
    if (seen) seen.count++;
    else bySum.set(sum, { order, count: 1 });
  }
  const rows = D.map((sum) => {
    const { order, count } = bySum.get(sum)!;
    const test = spearmanTest(
      order.map((_, k) => k),
      order,
    );
    return { sum: test.statistic, count, below: test.pGreater };
  });
  return {
    n,
    D: rows.map(({ sum }) => sum),
    count: rows.map(({ count }) => count),
    pLower: rows.map(({ below }) => below),
  };
}

function allOrders(n: number): number[][] {
  let orders: number[][] = [[]];
  for (let value = 0; value < n; value++)
    orders = orders.flatMap((order) =>
      Array.from({ length: order.length + 1 }, (_, place) => order.toSpliced(place, 0, value)),
    );
  return orders;
}

function tiedAnswer(): Part {
  const { x, y } = known.n8ties;
  const n = x.length;
  const { statistic, coefficient } = kendallTest(x, y);
  const variance = tiedVariance(n, tieCounts(x), tieCounts(y));
  const z = statistic / Math.sqrt(variance);
  const continued = (Math.abs(statistic) - 1) / Math.sqrt(variance);
  const [plain, corrected] = [z, continued].map((at) => 2 * normalUpperTail(at)) as [number, number];
  return {
    formula: {
      S: statistic,
      tau_a: statistic / ((n * (n - 1)) / 2),
      tau_b: coefficient,
      varS: variance,
      z,
      p_normal: plain,
      z_cc: continued,
      p_cc: corrected,
    },
    package_tau_b: coefficient,
    package_z: z,
    package_p: plain,
    package_p_continuity: corrected,
    permutationExact: byOrders(known.n8ties),
  };
}

holdToAccount({
  name: 'rank tests',
  values: known,
  given: ['hollanderWolfe/x', 'hollanderWolfe/y', 'n7/ages', 'n7/y', 'n8ties/x', 'n8ties/y'],
  described: { 'n7/note': 'which way time runs' },
  checks: [
    {
      claim: 'the published example, lightness of tuna and the opinion of a panel',
      at: 'hollanderWolfe',
      within: 1e-13,
      answer: () => {
        const { k, s } = byOrders(known.hollanderWolfe);
        const { x, y } = known.hollanderWolfe;
        return {
          kendall_tau: kendallTest(x, y).coefficient,
          T_concordant: concordant(known.hollanderWolfe),
          p_exact_two: k.p_two,
          p_exact_greater: k.p_greater,
          spearman: s.rho,
          sumD2: spearmanTest(x, y).statistic,
          spearman_p_package: s.p_two,
          allOrdersSpearman: s,
          allOrdersKendall: k,
        };
      },
    },
    {
      claim: 'seven values against their ages',
      at: 'n7',
      within: 1e-13,
      answer: () => {
        const { k, s } = byOrders(sinceThen);
        const { x, y } = sinceThen;
        return {
          kendall_tau: kendallTest(x, y).coefficient,
          T: concordant(sinceThen),
          S: k.S,
          p_exact_two: k.p_two,
          spearman: s.rho,
          sumD2: spearmanTest(x, y).statistic,
          p_exact_two_spearman: s.p_two,
          allOrders: { k, s },
        };
      },
    },
    { claim: 'eight values with ties', at: 'n8ties', within: 1e-12, answer: tiedAnswer },
    {
      claim: 'the null distribution of Kendall’s sum for four to ten values',
      at: 'kendallNull',
      within: 1e-13,
      answer: () => known.kendallNull.map(kendallNull),
    },
    {
      claim: 'the null distribution of Spearman’s squares for four to eight values',
      at: 'spearmanNull_D2',
      within: 1e-12,
      answer: () => known.spearmanNull_D2.map(spearmanNull),
    },
  ],
});
