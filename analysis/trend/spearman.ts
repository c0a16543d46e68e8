import { studentUpperTail } from '../statistics/index.ts';
import { requirePairs, type RankTest } from './kendall.ts';

/** Most values for which the distribution is worked out exactly; the work doubles with each. */
const mostExact = 14;

/**
 * Spearman's rank correlation with its exact probability if values are in no order, ties at their mean rank: the sum of
 * squared differences over all orders, built up set by set (a sum over subsets, 2ⁿ·n steps). Above fourteen values by
 * Student's t (Kendall and Gibbons 1990, Rank Correlation Methods, chapter 4). Throws as `kendallTest` does.
 */
export function spearmanTest(x: readonly number[], y: readonly number[]): RankTest {
  requirePairs(x, y);
  const [ranksX, ranksY] = [meanRanks(x), meanRanks(y)];
  const statistic = ranksX.reduce((sum, rank, k) => sum + (rank - ranksY[k]!) ** 2, 0);
  const coefficient = correlation(ranksX, ranksY);
  if (Number.isNaN(coefficient))
    return { coefficient, statistic, pTwoSided: NaN, pGreater: NaN, method: 'exact' };
  if (x.length > mostExact) {
    const t = coefficient * Math.sqrt((x.length - 2) / (1 - coefficient ** 2));
    const pGreater = studentUpperTail(t, x.length - 2);
    return {
      coefficient,
      statistic,
      pTwoSided: Math.min(1, 2 * Math.min(pGreater, 1 - pGreater)),
      pGreater,
      method: 'normal',
    };
  }
  return { coefficient, statistic, ...exactTails(ranksX, ranksY, statistic), method: 'exact' };
}

/** Ranks from 1, values alike at the mean of their ranks. */
export function meanRanks(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const alike = values.filter((other) => other === value).length;
    return below + (alike + 1) / 2;
  });
}

function correlation(x: readonly number[], y: readonly number[]): number {
  const centre = (x.length + 1) / 2;
  const products = x.reduce((sum, rank, k) => sum + (rank - centre) * (y[k]! - centre), 0);
  const squares = (ranks: readonly number[]) => ranks.reduce((sum, rank) => sum + (rank - centre) ** 2, 0);
  return products / Math.sqrt(squares(x) * squares(y));
}

/** Shares of all orders by the sum of squared differences; mean ranks may be halves, so sums count in quarters then. */
function squareShares(ranksX: readonly number[], ranksY: readonly number[]) {
  const n = ranksX.length;
  const parts = [...ranksX, ...ranksY].every(Number.isInteger) ? 1 : 4;
  const largest = largestSquares(ranksX, ranksY) * parts;
  // of each set of ranks used so far: shares by sum, and the largest sum that it has reached
  let layer = new Map([[0, { sums: startAtZero(largest), most: 0 }]]);
  for (let place = 0; place < n; place++) {
    const next: typeof layer = new Map();
    const share = 1 / (n - place);
    const gains = ranksY.map((rank) => Math.round(parts * (ranksX[place]! - rank) ** 2));
    for (const [used, { sums, most }] of layer)
      for (let pick = 0; pick < n; pick++) {
        if (used & (1 << pick)) continue;
        const set = used | (1 << pick);
        let into = next.get(set);
        if (!into) next.set(set, (into = { sums: new Float64Array(largest + 1), most: 0 }));
        const gain = gains[pick]!;
        const end = Math.min(most, largest - gain);
        into.most = Math.max(into.most, end + gain);
        const target = into.sums;
        for (let sum = 0; sum <= end; sum++) target[sum + gain]! += sums[sum]! * share;
      }
    layer = next;
  }
  return { parts, shares: layer.get((1 << n) - 1)!.sums };
}

function startAtZero(largest: number): Float64Array {
  return Float64Array.from({ length: largest + 1 }, (_, sum) => Number(sum === 0));
}

/** Largest sum of squared differences that any order can have: one list against the other turned round. */
function largestSquares(ranksX: readonly number[], ranksY: readonly number[]): number {
  const rising = ranksX.toSorted((a, b) => a - b);
  const falling = ranksY.toSorted((a, b) => b - a);
  return Math.ceil(rising.reduce((sum, rank, k) => sum + (rank - falling[k]!) ** 2, 0));
}

function exactTails(ranksX: readonly number[], ranksY: readonly number[], statistic: number) {
  const centre = expectedSquares(ranksX, ranksY);
  const far = Math.abs(statistic - centre);
  let [pTwoSided, pGreater] = [0, 0];
  const { parts, shares } = squareShares(ranksX, ranksY);
  shares.forEach((share, sum) => {
    if (Math.abs(sum / parts - centre) >= far - 1e-9) pTwoSided += share;
    if (sum / parts <= statistic + 1e-9) pGreater += share;
  });
  return { pTwoSided: Math.min(1, pTwoSided), pGreater: Math.min(1, pGreater) };
}

/** Mean of the statistic over all orders: where the correlation is 0. */
function expectedSquares(x: readonly number[], y: readonly number[]): number {
  const centre = (x.length + 1) / 2;
  const squares = (ranks: readonly number[]) => ranks.reduce((sum, rank) => sum + (rank - centre) ** 2, 0);
  return squares(x) + squares(y);
}
