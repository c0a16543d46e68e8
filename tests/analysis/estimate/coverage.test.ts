import { expect, test } from 'vitest';
import { readNodes } from '../../../analysis/estimate/estimate-nodes.ts';
import { findFit } from '../../../analysis/estimate/rate/fit.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { simulateData } from '../../reference/simulate-brownian.ts';
import { readAtRates } from '../../../analysis/estimate/passes/per-rate.ts';

const dataSets = 1000;

/** Share of simulated data sets whose 95% interval holds the hidden taxon's true value, the tree known. */
function coverageOf(measured: number, samplingShare: number): number {
  let held = 0;
  for (let set = 0; set < dataSets; set++) {
    const random = seededRandom('coverage', measured, samplingShare, set);
    const { tree, observations, hidden, truth } = simulateData(measured, samplingShare, random, normalDraw);
    const network = buildNetwork(tree, observations);
    const fit = findFit(network, 'brownian')!;
    const nodes = readNodes(fit, [network.nodeOf[hidden]!], [], { level: 0.95, seed: 1 });
    const [low, high] = readAtRates(fit, nodes).values[0]!.interval;
    held += Number(truth >= low && truth <= high);
  }
  return held / dataSets;
}

// 99.9% binomial limits of 1000 data sets at 95%: 0.926 and 0.971
test.each([4, 5, 8, 12])(
  'without sampling variance %d measured taxa give intervals that hold 95 times in a hundred',
  (measured) => {
    const coverage = coverageOf(measured, 0);
    expect(coverage).toBeGreaterThan(0.926);
    expect(coverage).toBeLessThan(0.971);
  },
);

test.each([4, 5, 8, 12])(
  'with sampling variance %d measured taxa give intervals that hold at least as often',
  (measured) => {
    for (const samplingShare of [0.25, 0.5])
      expect(coverageOf(measured, samplingShare)).toBeGreaterThan(0.926);
  },
);
