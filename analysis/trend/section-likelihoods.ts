import type { Profile } from './section.ts';

const logTwoPi = Math.log(2 * Math.PI);

/** Levels of a section for the likelihoods: time since the oldest, mean, and sampling variance of the mean. */
export interface SectionSeries {
  readonly elapsedMyr: readonly number[];
  readonly means: readonly number[];
  readonly samplingVariances: readonly number[];
}

/** What is held fixed; means left out are set at their best. */
export interface FixedMeans {
  readonly level?: number;
  readonly meanStep?: number;
}

/**
 * Joint log-likelihood of a walk: means start at a level and change by a mean step a million years (0 if the walk is
 * unbiased), covariances are the variance times the earlier time. By a filter through the levels, linear in them
 * (Hunt, Bell and Travis 2008, Evolution 62: 700–710, for the joint form).
 */
export function jointWalk(
  series: SectionSeries,
  variance: number,
  directional: boolean,
  fixed: FixedMeans = {},
): Profile {
  const { elapsedMyr, means, samplingVariances } = series;
  // the means, the level (all ones) and the time are filtered alike, and solved by least squares at the end
  let value = 0;
  let one = 0;
  let time = 0;
  const sums = new GramSums(series.means[0]!);
  let spread = 0;
  let lastMyr = 0;
  let logs = 0;
  for (let k = 0; k < means.length; k++) {
    const nowMyr = elapsedMyr[k]!;
    spread += variance * (nowMyr - lastMyr);
    lastMyr = nowMyr;
    const total = spread + samplingVariances[k]!;
    const gain = spread / total;
    const valueRest = means[k]! - value;
    const oneRest = 1 - one;
    const timeRest = nowMyr - time;
    sums.add(valueRest, oneRest, timeRest, 1 / total);
    value += gain * valueRest;
    one += gain * oneRest;
    time += gain * timeRest;
    logs += logTwoPi + Math.log(total);
    spread *= 1 - gain;
  }
  return sums.solve(logs, directional, fixed);
}

/** Joint log-likelihood of stasis: levels scatter about an optimum by a variance, independently. */
export function jointStasis(series: SectionSeries, variance: number, fixed: FixedMeans = {}): Profile {
  const sums = new GramSums(series.means[0]!);
  let logs = 0;
  series.means.forEach((mean, k) => {
    const total = variance + series.samplingVariances[k]!;
    sums.add(mean, 1, 0, 1 / total);
    logs += logTwoPi + Math.log(total);
  });
  return sums.solve(logs, false, fixed);
}

/** Log-likelihood of the steps of a walk from each level to the next, taken as independent (Hunt 2006). */
export function stepsOfWalk(
  series: SectionSeries,
  variance: number,
  directional: boolean,
  fixed: FixedMeans = {},
): Profile {
  const sums = new GramSums(series.means[0]!);
  let logs = 0;
  forEachStep(series, (myr, change, errors) => {
    const total = variance * myr + errors;
    sums.add(change, 0, myr, 1 / total);
    logs += logTwoPi + Math.log(total);
  });
  const { logLikelihood, meanStep } = sums.solve(logs, directional, { ...fixed, level: 0 });
  return { logLikelihood, ...(meanStep === undefined ? {} : { meanStep }) };
}

/** Log-likelihood of the steps of stasis: each goes from the level before to the optimum, with scatter (Hunt 2006). */
export function stepsOfStasis(series: SectionSeries, variance: number, fixed: FixedMeans = {}): Profile {
  const sums = new GramSums(series.means[0]!);
  let logs = 0;
  for (let k = 1; k < series.means.length; k++) {
    const total = variance + series.samplingVariances[k]!;
    sums.add(series.means[k]!, 1, 0, 1 / total);
    logs += logTwoPi + Math.log(total);
  }
  return sums.solve(logs, false, fixed);
}

function forEachStep(
  series: SectionSeries,
  visit: (myr: number, change: number, errors: number) => void,
): void {
  const { elapsedMyr, means, samplingVariances } = series;
  for (let k = 1; k < means.length; k++)
    visit(
      elapsedMyr[k]! - elapsedMyr[k - 1]!,
      means[k]! - means[k - 1]!,
      samplingVariances[k]! + samplingVariances[k - 1]!,
    );
}

/**
 * Weighted sums of products of three columns, from which the best level and step follow. Values are counted from an origin
 * near them: squares of whole values would leave the likelihood only eleven digits, and its maximum five.
 */
class GramSums {
  readonly #origin: number;
  #valueValue = 0;
  #valueOne = 0;
  #valueTime = 0;
  #oneOne = 0;
  #oneTime = 0;
  #timeTime = 0;

  constructor(origin: number) {
    this.#origin = origin;
  }

  add(wholeValue: number, one: number, time: number, weight: number): void {
    const value = wholeValue - this.#origin * one;
    this.#valueValue += value * value * weight;
    this.#valueOne += value * one * weight;
    this.#valueTime += value * time * weight;
    this.#oneOne += one * one * weight;
    this.#oneTime += one * time * weight;
    this.#timeTime += time * time * weight;
  }

  solve(logs: number, directional: boolean, fixed: FixedMeans): Profile {
    const [level, meanStep] = this.#best(
      directional,
      fixed.level === undefined ? fixed : { ...fixed, level: fixed.level - this.#origin },
    );
    const squares =
      this.#valueValue -
      2 * level * this.#valueOne -
      2 * meanStep * this.#valueTime +
      level * level * this.#oneOne +
      2 * level * meanStep * this.#oneTime +
      meanStep * meanStep * this.#timeTime;
    return {
      logLikelihood: -0.5 * (logs + squares),
      level: level + this.#origin,
      ...(directional ? { meanStep } : {}),
    };
  }

  #best(directional: boolean, fixed: FixedMeans): [level: number, meanStep: number] {
    const [vo, vt, oo, ot, tt] = [
      this.#valueOne,
      this.#valueTime,
      this.#oneOne,
      this.#oneTime,
      this.#timeTime,
    ];
    if (!directional) return [fixed.level ?? vo / oo, 0];
    if (fixed.level !== undefined) return [fixed.level, fixed.meanStep ?? (vt - fixed.level * ot) / tt];
    if (fixed.meanStep !== undefined) return [(vo - fixed.meanStep * ot) / oo, fixed.meanStep];
    const determinant = oo * tt - ot * ot;
    return [(vo * tt - vt * ot) / determinant, (vt * oo - vo * ot) / determinant];
  }
}
