import {
  incompleteBeta,
  inverseNormal,
  studentProbability,
  studentQuantile,
} from '../../analysis/statistics/index.ts';
import { holdToAccount } from './account.ts';
import known from './values/coverage.json' with { type: 'json' };

const normal = inverseNormal(0.975);
const held = (reach: number, df: number) => 2 * studentProbability(reach, df) - 1;

/** Fewest of some successes that a share of all binomial samples do not exceed (NIST Digital Library of Mathematical Functions 8.17.5). */
function binomialQuantile(probability: number, trials: number, chance: number): number {
  let successes = 0;
  while (successes < trials && incompleteBeta(1 - chance, trials - successes, successes + 1) < probability)
    successes++;
  return successes;
}

/** How often intervals hold by Student's distribution, and by the mistakes of a normal one or another rate. */
function exactly(n: number) {
  const df = n - 1;
  const quantile = studentQuantile(0.975, df);
  // the rate of largest likelihood is too small by (n − 1) / n
  const shrunk = Math.sqrt(df / n);
  return {
    df,
    t975: quantile,
    coverage_t: held(quantile, df),
    coverage_normal_REML: held(normal, df),
    coverage_normal_ML: held(normal * shrunk, df),
    coverage_t_withMLrate: held(quantile * shrunk, df),
    coverage_t_df_n: held(studentQuantile(0.975, n), df),
  };
}

holdToAccount({
  name: 'coverage',
  values: known,
  given: ['exact/*/n', 'simulated/*/n', 'simulated/*/reps', 'acceptBand_99.9pct_forN/*/N'],
  described: {
    'simulated/*/simulated_t_ignoringUncertaintyOfMean':
      'depends on the trees that the reference drew; the trap of the known mean has exact values instead',
    looNote: 'a remark',
  },
  checks: [
    {
      claim:
        'how often intervals hold by Student’s distribution, and by the mistakes of a normal one or another rate',
      at: 'exact',
      within: 1e-11,
      answer: () => known.exact.map(({ n }) => exactly(n)),
    },
    {
      claim: 'standard errors of simulated shares',
      at: 'simulated',
      within: 1e-12,
      answer: () => known.simulated.map(({ reps }) => ({ mcSE: Math.sqrt((0.95 * 0.05) / reps) })),
    },
    {
      claim: 'shares that the reference simulated lie within four standard errors of the exact ones',
      at: 'simulated',
      within: 4 * 0.0018,
      size: 1,
      answer: () =>
        known.simulated.map(({ n }) => {
          const { coverage_t, coverage_normal_REML, coverage_normal_ML } = exactly(n);
          return {
            simulated_t_REML: coverage_t,
            simulated_normal_REML: coverage_normal_REML,
            simulated_normal_ML: coverage_normal_ML,
          };
        }),
    },
    {
      claim: 'limits of chance at one in a thousand for simulations of 95%',
      at: 'acceptBand_99.9pct_forN',
      within: 1e-12,
      answer: () =>
        known['acceptBand_99.9pct_forN'].map(({ N }) => ({
          lo: binomialQuantile(0.0005, N, 0.95) / N,
          hi: binomialQuantile(0.9995, N, 0.95) / N,
        })),
    },
  ],
});
