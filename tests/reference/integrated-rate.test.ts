import { estimateTrait } from '../../analysis/estimate/index.ts';
import { mixtureMoments } from '../../analysis/estimate/mixture.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { findFit } from '../../analysis/estimate/rate/fit.ts';
import { holdToAccount } from './account.ts';
import { nineTipsNode, nineTipsTree as tree, observeNineTips } from './nine-tips-tree.ts';
import { mixtureOf } from './one-rate.ts';
import integrated from './values/integrated-rate.json' with { type: 'json' };

type Case = (typeof integrated.cases)[number];

function answerOf({ missing, measurementError }: Case) {
  const observations = observeNineTips([missing].flat(), measurementError);
  const answer = estimateTrait({ tree, observations });
  if (!answer.estimated) throw new Error(answer.reason);
  const network = buildNetwork(tree, observations);
  const node = network.nodeOf[nineTipsNode('G')]!;
  const { mean } = mixtureMoments(mixtureOf(findFit(network, 'brownian')!, node));
  const { median, interval } = answer.nodes[nineTipsNode('G')]!;
  return { median, lower: interval[0], upper: interval[1], mean, rate: answer.model.rateReml };
}

holdToAccount({
  name: 'integrated rate',
  values: integrated,
  given: ['newick', 'y', 'se', 'cases/*/missing', 'cases/*/measurementError'],
  described: {
    'cases/*/priorTailMass':
      'what the dense grid of the reference leaves out at its two ends; our grid has other ends',
  },
  checks: [
    {
      claim: 'median, limits and mean of G are those of dense algebra on 60,001 rates',
      at: 'cases',
      within: 1e-9,
      answer: () =>
        integrated.cases.map((one) => {
          const { median, lower, upper, mean } = answerOf(one);
          return { median, lower, upper, mean };
        }),
    },
    {
      claim: 'the rate of largest restricted likelihood is that of a maximum search',
      at: 'cases',
      within: 1e-7,
      answer: () => integrated.cases.map((one) => ({ remlRate: answerOf(one).rate })),
    },
  ],
});
