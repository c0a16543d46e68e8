import { findBestRate, hasTimes, type ModelName } from '../rate/fit.ts';
import type { Effort } from '../rate/rate-grid.ts';
import type { Network } from '../passes/network.ts';

/** One model by its largest likelihood. */
export interface ComparedModel {
  readonly name: ModelName;
  /** Rate of largest likelihood, squared units of the scale a million years. */
  readonly rate: number;
  readonly logLikelihood: number;
  readonly parameters: number;
  /** Akaike's criterion corrected for sample size; null below parameters + 2 observations. */
  readonly aicc: number | null;
  /** What its estimate of the rate does, where that is no finding: it lies on the bound of no change. */
  readonly note?: 'rate-at-zero';
}

/** How much lower the criterion of the trend must be before it is used. */
export const trendMargin = 2;

/**
 * Akaike's criterion corrected for sample size (Hurvich and Tsai 1989, Biometrika 76: 297–307), among likelihoods of
 * one kind only; null below parameters + 2 observations.
 */
export function correctedCriterion(
  logLikelihood: number,
  parameters: number,
  observations: number,
): number | null {
  if (observations < parameters + 2) return null;
  return (
    -2 * logLikelihood +
    2 * parameters +
    (2 * parameters * (parameters + 1)) / (observations - parameters - 1)
  );
}

/** Fits both models by full likelihood; the trend is left out where no time separates the observations. */
export function compareModels(network: Network, effort: Effort = 'full'): ComparedModel[] {
  const names: readonly (readonly [ModelName, number])[] = [
    ['brownian', 2],
    ['trend', 3],
  ];
  return names.flatMap(([name, parameters]) => {
    const best =
      name === 'trend' && !hasTimes(network) ? undefined : findBestRate(network, name, 'full', effort);
    if (!best) return [];
    const { logLikelihood, rate } = best;
    const aicc = correctedCriterion(logLikelihood, parameters, network.observations.length);
    return [
      {
        name,
        rate,
        logLikelihood,
        parameters,
        aicc,
        ...(rate === 0 ? { note: 'rate-at-zero' as const } : {}),
      },
    ];
  });
}

/** The model to use: Brownian motion unless the trend's criterion is lower by the margin or more. */
export function chooseModel(compared: readonly ComparedModel[]): ModelName {
  const criterion = (name: ModelName) => compared.find((model) => model.name === name)?.aicc ?? null;
  const [plain, trend] = [criterion('brownian'), criterion('trend')];
  return plain !== null && trend !== null && trend <= plain - trendMargin ? 'trend' : 'brownian';
}
