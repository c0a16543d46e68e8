import { inverseNormal, findRoot, normalProbability } from '../statistics/index.ts';

/** What is known of the age of a bed, Ma. */
export type HorizonAge =
  | {
      /** Anywhere between an older and a younger end, each with a standard error of its own, 0 if left out. */
      readonly kind: 'uniform';
      readonly fromMa: number;
      readonly toMa: number;
      readonly fromSigmaMa?: number;
      readonly toSigmaMa?: number;
    }
  | { readonly kind: 'normal'; readonly meanMa: number; readonly sigmaMa: number };

/** Middle of the age: the mean, Ma. */
export function ageMeanMa(age: HorizonAge): number {
  return age.kind === 'normal' ? age.meanMa : (age.fromMa + age.toMa) / 2;
}

/**
 * Standard deviation of the age, Ma. For an age uniform between two ends D apart, whose errors are independent, D² / 12 plus
 * a third of the squared errors: the mean square of a uniform share. 0 for one exact age.
 */
export function ageSigmaMa(age: HorizonAge): number {
  if (age.kind === 'normal') return age.sigmaMa;
  const ends = (age.fromSigmaMa ?? 0) ** 2 + (age.toSigmaMa ?? 0) ** 2;
  return Math.sqrt((age.fromMa - age.toMa) ** 2 / 12 + ends / 3);
}

/** Age that the given share of the probability is younger than, Ma; the share lies inside 0 to 1. */
export function ageQuantileMa(age: HorizonAge, probability: number): number {
  if (age.kind === 'normal') return age.meanMa + age.sigmaMa * inverseNormal(probability);
  if (!age.fromSigmaMa && !age.toSigmaMa) return age.toMa + probability * (age.fromMa - age.toMa);
  const wide = 10 * Math.max(age.fromSigmaMa ?? 0, age.toSigmaMa ?? 0);
  return findRoot((ma) => probabilityYounger(age, ma) - probability, age.toMa - wide, age.fromMa + wide);
}

/**
 * Probability that the bed is younger than an age in Ma. Uncertain ends are averaged over the place between them by
 * Simpson's rule; for an exact age it is 0 or 1, and 0 at that age itself.
 */
export function probabilityYounger(age: HorizonAge, ma: number): number {
  if (age.kind === 'normal')
    return age.sigmaMa > 0 ? normalProbability((ma - age.meanMa) / age.sigmaMa) : Number(ma > age.meanMa);
  const { fromMa, toMa, fromSigmaMa = 0, toSigmaMa = 0 } = age;
  if (fromSigmaMa === 0 && toSigmaMa === 0) {
    if (fromMa === toMa) return Number(ma > toMa);
    return Math.min(1, Math.max(0, (ma - toMa) / (fromMa - toMa)));
  }
  return simpson((share) => {
    const middle = toMa + share * (fromMa - toMa);
    const sigma = Math.hypot(share * fromSigmaMa, (1 - share) * toSigmaMa);
    return sigma > 0 ? normalProbability((ma - middle) / sigma) : Number(ma > middle);
  });
}

/** Integral from 0 to 1 by Simpson's rule on 400 pieces. */
function simpson(of: (share: number) => number): number {
  let sum = of(0) + of(1);
  for (let k = 1; k < 400; k++) sum += (k % 2 === 1 ? 4 : 2) * of(k / 400);
  return sum / 1200;
}
