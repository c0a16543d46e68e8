import type { Observation } from '../../analysis/estimate/index.ts';
import type { DatedTree } from '../../analysis/tree/index.ts';
import { randomTree } from './random-tree.ts';

/**
 * Brownian motion on a random tree of many ages with one tip hidden: the tree, what was observed of the others, and the
 * hidden tip's true value. `samplingShare` is the sampling deviation of a tip over the Brownian one at the mean depth.
 */
export function simulateData(
  measured: number,
  samplingShare: number,
  random: () => number,
  normal: (random: () => number) => number,
): { tree: DatedTree; observations: Observation[]; hidden: number; truth: number } {
  const tree = randomTree(measured + 1, random);
  const root = tree.parent.length - 1;
  const values = new Float64Array(root + 1);
  for (let node = root - 1; node >= 0; node--)
    values[node] = values[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normal(random);
  const tips = tree.label.flatMap((label, node) => (label === '' ? [] : [node]));
  const meanDepth = tips.reduce((sum, tip) => sum + tree.ageMa[root]! - tree.ageMa[tip]!, 0) / tips.length;
  const hidden = tips[Math.floor(random() * tips.length)]!;
  const observations = tips
    .filter((tip) => tip !== hidden)
    .map((tip) => {
      const deviation = samplingShare * Math.sqrt(meanDepth) * (0.5 + random());
      return {
        taxon: tree.label[tip]!,
        mean: values[tip]! + deviation * normal(random),
        variance: deviation ** 2,
      };
    });
  return { tree, observations, hidden, truth: values[hidden]! };
}
