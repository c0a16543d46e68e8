import { normalUpperTail } from '../statistics/index.ts';

/** A rank test. Probabilities are NaN where nothing varies. */
export interface RankTest {
  /** Kendall's tau b, or Spearman's rho. */
  readonly coefficient: number;
  /** Concordant less discordant pairs, or the sum of squared differences of ranks. */
  readonly statistic: number;
  readonly pTwoSided: number;
  /** Probability of so high a coefficient or higher. */
  readonly pGreater: number;
  /** How the probability was found: exact needs no large sample. */
  readonly method: 'exact' | 'normal';
}

/** Most values with ties for which all orders are tried one by one. */
const mostWithTies = 9;

/**
 * Kendall's rank correlation (tau b) with its exact probability if values are in no order: by recursion without ties
 * (Kendall 1938, Biometrika 30: 81–93), by all orders for nine values or fewer with ties, else by the normal
 * approximation with ties corrected. Throws for lists of unlike length or fewer than two values.
 */
export function kendallTest(x: readonly number[], y: readonly number[]): RankTest {
  requirePairs(x, y);
  const n = x.length;
  const statistic = concordance(x, y);
  const pairs = (n * (n - 1)) / 2;
  const [tiedX, tiedY] = [tieCounts(x), tieCounts(y)];
  const tiedPairs = (counts: readonly number[]) =>
    counts.reduce((sum, count) => sum + (count * (count - 1)) / 2, 0);
  const coefficient = statistic / Math.sqrt((pairs - tiedPairs(tiedX)) * (pairs - tiedPairs(tiedY)));
  if (Number.isNaN(coefficient))
    return { coefficient, statistic, pTwoSided: NaN, pGreater: NaN, method: 'exact' };
  const ties = tiedX.length < n || tiedY.length < n;
  if (!ties) return { coefficient, statistic, ...exactTails(statistic, n), method: 'exact' };
  if (n <= mostWithTies)
    return { coefficient, statistic, ...tailsByOrders(x, y, statistic), method: 'exact' };
  const z = statistic / Math.sqrt(tiedVariance(n, tiedX, tiedY));
  return {
    coefficient,
    statistic,
    pTwoSided: Math.min(1, 2 * normalUpperTail(Math.abs(z))),
    pGreater: normalUpperTail(z),
    method: 'normal',
  };
}

/** Concordant less discordant pairs. */
function concordance(x: readonly number[], y: readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < x.length; i++)
    for (let j = 0; j < i; j++) sum += Math.sign(x[i]! - x[j]!) * Math.sign(y[i]! - y[j]!);
  return sum;
}

/** Shares of all orders of n values by number of discordant pairs. */
function discordanceShares(n: number): Float64Array {
  let shares = Float64Array.of(1);
  for (let size = 2; size <= n; size++) {
    const next = new Float64Array(shares.length + size - 1);
    // a new largest value makes from none to size − 1 discordant pairs, each alike
    let running = 0;
    for (let k = 0; k < next.length; k++) {
      running += (shares[k] ?? 0) - (k >= size ? shares[k - size]! : 0);
      next[k] = running / size;
    }
    shares = next;
  }
  return shares;
}

function exactTails(statistic: number, n: number): { pTwoSided: number; pGreater: number } {
  const shares = discordanceShares(n);
  const pairs = shares.length - 1;
  const upTo = (discordant: number) => {
    let sum = 0;
    for (let k = 0; k <= discordant && k <= pairs; k++) sum += shares[k]!;
    return sum;
  };
  const pTwoSided = Math.min(1, 2 * upTo((pairs - Math.abs(statistic)) / 2));
  return { pTwoSided, pGreater: Math.min(1, upTo((pairs - statistic) / 2)) };
}

function tailsByOrders(x: readonly number[], y: readonly number[], statistic: number) {
  let beyond = 0;
  let greater = 0;
  let all = 0;
  forEachOrder(y, (order) => {
    const other = concordance(x, order);
    beyond += Number(Math.abs(other) >= Math.abs(statistic));
    greater += Number(other >= statistic);
    all++;
  });
  return { pTwoSided: beyond / all, pGreater: greater / all };
}

/** Visits every order of values in place (Heap 1963, Computer Journal 6: 293–294). */
function forEachOrder(values: readonly number[], visit: (order: readonly number[]) => void): void {
  const order = [...values];
  const counters = new Int32Array(order.length);
  visit(order);
  for (let i = 1; i < order.length;) {
    if (counters[i]! >= i) {
      counters[i++] = 0;
      continue;
    }
    const other = i % 2 === 0 ? 0 : counters[i]!;
    [order[i], order[other]] = [order[other]!, order[i]!];
    visit(order);
    counters[i]!++;
    i = 1;
  }
}

/** How often each value stands in a list. */
export function tieCounts(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()];
}

/** Variance of the statistic in random order with ties (Kendall and Gibbons 1990, Rank Correlation Methods, chapter 4). */
export function tiedVariance(n: number, tiedX: readonly number[], tiedY: readonly number[]): number {
  const sum = (counts: readonly number[], of: (count: number) => number) =>
    counts.reduce((total, count) => total + of(count), 0);
  const cubic = (count: number) => count * (count - 1) * (2 * count + 5);
  const triple = (count: number) => count * (count - 1) * (count - 2);
  const double = (count: number) => count * (count - 1);
  return (
    (cubic(n) - sum(tiedX, cubic) - sum(tiedY, cubic)) / 18 +
    (n > 2 ? (sum(tiedX, triple) * sum(tiedY, triple)) / (9 * triple(n)) : 0) +
    (sum(tiedX, double) * sum(tiedY, double)) / (2 * double(n))
  );
}

/** Throws for lists of unlike length, fewer than two values, or a value that is not a number. */
export function requirePairs(x: readonly number[], y: readonly number[]): void {
  if (x.length !== y.length)
    throw new Error(`a rank test needs as many values as values, got ${x.length} and ${y.length}`);
  if (x.length < 2) throw new Error(`a rank test needs at least two pairs, got ${x.length}`);
  const wrong = [...x, ...y].find((value) => !Number.isFinite(value));
  if (wrong !== undefined) throw new Error(`a rank test needs numbers, got ${wrong}`);
}
