import { inverseNormal, studentProbability, studentQuantile } from '../../analysis/statistics/index.ts';
import { holdToAccount } from './account.ts';
import known from './values/coverage.json' with { type: 'json' };

const normal = inverseNormal(0.975);
const held = (reach: number, df: number) => 2 * studentProbability(reach, df) - 1;

const drawnElsewhere =
  'a simulation with another program’s random numbers; tests/analysis/estimate/coverage.test.ts draws its own, and the bench ten thousand a cell';

holdToAccount({
  name: 'coverage',
  values: known,
  given: ['exact/*/n'],
  described: {
    simulated: drawnElsewhere,
    'acceptBand_99.9pct_forN':
      'limits of chance for a simulation of so many data sets, which the coverage test takes one of',
    looNote: 'a remark',
  },
  checks: [
    {
      claim:
        'how often intervals hold by Student’s distribution, and by the mistakes of a normal one or another rate',
      at: 'exact',
      within: 1e-11,
      answer: () =>
        known.exact.map(({ n }) => {
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
        }),
    },
  ],
});
