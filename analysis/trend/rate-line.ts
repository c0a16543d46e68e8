import { normalDraw, seededRandom } from '../random/index.ts';
import { darwins, type RateSample } from './rates.ts';

/** Rate between two levels of a section, in darwins without direction, and the time between them. */
export interface LevelRate {
  /** Places of the two levels in the series, the older first. */
  readonly from: number;
  readonly to: number;
  readonly intervalMyr: number;
  readonly darwins: number;
  readonly standardError: number;
}

/** A level of a section as its rates need it. */
export interface RateLevel {
  readonly elapsedMyr: number;
  readonly sample: RateSample;
}

/**
 * Rates between all pairs of levels, the shortest interval first; levels of one age make no pair. More pairs than `most`
 * are thinned evenly over the order of their intervals, and `total` says how many there were.
 */
export function ratesBetweenLevels(
  levels: readonly RateLevel[],
  most: number,
): { readonly pairs: LevelRate[]; readonly total: number } {
  const all: { from: number; to: number; intervalMyr: number }[] = [];
  levels.forEach((upper, to) => {
    for (let from = 0; from < to; from++) {
      const intervalMyr = upper.elapsedMyr - levels[from]!.elapsedMyr;
      if (intervalMyr > 0) all.push({ from, to, intervalMyr });
    }
  });
  all.sort((a, b) => a.intervalMyr - b.intervalMyr || a.from - b.from);
  const step = Math.max(1, all.length / most);
  const kept = Array.from({ length: Math.min(all.length, most) }, (_, k) => all[Math.floor(k * step)]!);
  return {
    total: all.length,
    pairs: kept.map(({ from, to, intervalMyr }) => {
      const { rate, standardError } = darwins(levels[from]!.sample, levels[to]!.sample, intervalMyr);
      return { from, to, intervalMyr, darwins: Math.abs(rate), standardError };
    }),
  };
}

/** A straight line through the logs of rate and interval: ln rate = intercept + slope · ln interval. */
export interface RateLine {
  readonly slope: number;
  readonly intercept: number;
}

/**
 * Line by least squares through the natural logs of rate and interval (Gingerich 1993, American Journal of Science
 * 293-A: 453–478). Pairs that do not differ are left out; undefined with fewer than three others, or one interval.
 * The pairs share levels, so the line has no standard error of its own: `slopesByChance` says what it may be.
 */
export function rateLine(pairs: readonly Pick<LevelRate, 'intervalMyr' | 'darwins'>[]): RateLine | undefined {
  const sums = { n: 0, x: 0, y: 0, xx: 0, xy: 0 };
  for (const { intervalMyr, darwins: rate } of pairs) {
    if (!(rate > 0)) continue;
    const [x, y] = [Math.log(intervalMyr), Math.log(rate)];
    sums.n += 1;
    sums.x += x;
    sums.y += y;
    sums.xx += x * x;
    sums.xy += x * y;
  }
  const { n, x, y, xx, xy } = sums;
  const spread = xx - (x * x) / n;
  if (n < 3 || !(spread > 1e-12 * xx)) return undefined;
  const slope = (xy - (x * y) / n) / spread;
  return { slope, intercept: (y - slope * x) / n };
}

/**
 * Middle and 95% range of the slopes that simulated levels give over the same pairs: levels walk without direction by
 * `walkVariance` a million years, natural logs squared, and each mean errs by its sampling. With a variance of 0 nothing
 * changes, and the slope is near −1, because the interval stands in both axes. Undefined where no set has a line.
 */
export function slopesByChance(question: {
  readonly levels: readonly RateLevel[];
  readonly pairs: readonly LevelRate[];
  readonly walkVariance: number;
  readonly draws: number;
  readonly seed: string | number;
}): { readonly middle: number; readonly range: readonly [number, number] } | undefined {
  const { levels, pairs, walkVariance, draws, seed } = question;
  const slopes: number[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const means = walked(levels, walkVariance, seededRandom(seed, 'rate-line', draw));
    const drawn = pairs.map(({ from, to, intervalMyr }) => ({
      intervalMyr,
      darwins: Math.abs(means[to]! - means[from]!) / intervalMyr,
    }));
    const line = rateLine(drawn);
    if (line) slopes.push(line.slope);
  }
  if (slopes.length === 0) return undefined;
  slopes.sort((a, b) => a - b);
  const at = (share: number) => slopes[Math.round(share * (slopes.length - 1))]!;
  return { middle: at(0.5), range: [at(0.025), at(0.975)] };
}

/** Means of the levels, natural logs, from a walk that starts at 0. */
function walked(levels: readonly RateLevel[], variance: number, random: () => number): number[] {
  let [course, lastMyr] = [0, levels[0]?.elapsedMyr ?? 0];
  return levels.map(({ elapsedMyr, sample: { logDeviation, n } }) => {
    course += Math.sqrt(variance * (elapsedMyr - lastMyr)) * normalDraw(random);
    lastMyr = elapsedMyr;
    return course + (logDeviation / Math.sqrt(n)) * normalDraw(random);
  });
}
