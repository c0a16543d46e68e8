/** A sample of a positive length at one time: mean, standard deviation of the natural log, number of individuals. */
export interface RateSample {
  readonly mean: number;
  readonly logDeviation: number;
  readonly n: number;
}

/** A rate of change between two samples; it means nothing without the interval it was measured over. */
export interface ChangeRate {
  readonly rate: number;
  readonly standardError: number;
  /** Interval in million years, or in generations. */
  readonly interval: number;
}

/**
 * Rate of change of a length in darwins, natural logs a million years (Haldane 1949, Evolution 3: 51–56), with its
 * standard error from the two samples. Throws for a length or an interval of 0 or less.
 */
export function darwins(earlier: RateSample, later: RateSample, intervalMyr: number): ChangeRate {
  requireAbove('interval', intervalMyr);
  const error = Math.hypot(
    earlier.logDeviation / Math.sqrt(earlier.n),
    later.logDeviation / Math.sqrt(later.n),
  );
  return {
    rate: logChange(earlier, later) / intervalMyr,
    standardError: error / intervalMyr,
    interval: intervalMyr,
  };
}

/**
 * Rate of change of a length in haldanes, pooled standard deviations of the natural log a generation (Gingerich 1993,
 * American Journal of Science 293-A: 453–478), with its standard error from the two samples, the deviation taken as
 * known. Throws for a length, a deviation or an interval of 0 or less.
 */
export function haldanes(earlier: RateSample, later: RateSample, generations: number): ChangeRate {
  requireAbove('number of generations', generations);
  const deviation = pooledLogDeviation(earlier, later);
  requireAbove('pooled deviation', deviation);
  return {
    rate: logChange(earlier, later) / deviation / generations,
    standardError: Math.sqrt(1 / earlier.n + 1 / later.n) / generations,
    interval: generations,
  };
}

/** Pooled standard deviation of the natural log of two samples. */
export function pooledLogDeviation(earlier: RateSample, later: RateSample): number {
  const squares = (earlier.n - 1) * earlier.logDeviation ** 2 + (later.n - 1) * later.logDeviation ** 2;
  return Math.sqrt(squares / (earlier.n + later.n - 2));
}

function logChange(earlier: RateSample, later: RateSample): number {
  requireAbove('length', earlier.mean);
  requireAbove('length', later.mean);
  return Math.log(later.mean / earlier.mean);
}

function requireAbove(what: string, value: number): void {
  if (!(value > 0)) throw new Error(`${what} must be above 0, got ${value}`);
}
