import { findBestRate } from '../../analysis/estimate/rate/fit.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { makeColumnMessages } from '../../analysis/estimate/passes/messages.ts';
import { passUpTrend, timeNetwork } from '../../analysis/estimate/passes/pass-up-trend.ts';
import { holdToAccount } from './account.ts';
import { caseChecks, treeOfNineTips } from './brownian-account.ts';
import { nineTipsTree as tree, observeNineTips as observe } from './nine-tips-tree.ts';
import plain from './values/nine-tips.json' with { type: 'json' };
import trend from './values/nine-tips-trend.json' with { type: 'json' };

const given = [
  'newick',
  'rootAge',
  'tips',
  'y',
  'se',
  'cases/*/missing',
  'cases/*/measurementErrorUsed',
  'cases/*/trend',
];
const withoutG = buildNetwork(tree, observe(['G'], false));

holdToAccount({
  name: 'nine tips',
  values: plain,
  given,
  described: { notes: 'words on the conventions of the values' },
  checks: [
    { claim: 'paths, times and ages of the tree', within: 1e-15, answer: treeOfNineTips },
    ...plain.cases.flatMap(caseChecks),
    {
      claim: 'a second program for generalised least squares agrees',
      at: 'secondProgram_case1',
      within: 1e-7,
      answer: () => {
        const [restricted, full] = (['restricted', 'full'] as const).map((kind) =>
          findBestRate(withoutG, 'brownian', kind)!,
        );
        return {
          coef: plain.cases[0]!.rootMean,
          sigma2_REML: restricted!.rate,
          sigma2_ML: full!.rate,
          logLik_REML: restricted!.logLikelihood,
          logLik_ML: full!.logLikelihood,
        };
      },
    },
  ],
});

holdToAccount({
  name: 'nine tips with a trend',
  values: trend,
  given,
  checks: [
    { claim: 'paths, times and ages of the tree', within: 1e-15, answer: treeOfNineTips },
    ...trend.cases.flatMap(caseChecks),
    {
      claim: 'a second program for generalised least squares agrees',
      at: 'secondProgram_case1',
      within: 1e-7,
      answer: () => {
        const best = findBestRate(withoutG, 'trend', 'restricted')!;
        const { slope, slopeVariance, centre } = passUpTrend(
          withoutG,
          timeNetwork(withoutG),
          best.rate,
          makeColumnMessages(withoutG.parent.length),
        );
        return {
          coef: [centre.value - slope * centre.time, slope],
          se_coef: [Math.sqrt(centre.variance + centre.time ** 2 * slopeVariance), Math.sqrt(slopeVariance)],
          sigma2_REML: best.rate,
          logLik_REML: best.logLikelihood,
        };
      },
    },
  ],
});
