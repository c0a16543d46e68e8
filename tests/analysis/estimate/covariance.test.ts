import { expect, test } from 'vitest';
import { covariancesWith } from '../../../analysis/estimate/passes/covariance.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { beliefOf } from '../../../analysis/estimate/passes/per-rate.ts';
import { nineTipsNode, nineTipsTree as tree, observeNineTips } from '../../reference/nine-tips-tree.ts';
import { knownAtRate } from '../../reference/one-rate.ts';

test.each(['brownian', 'trend'] as const)(
  'by %s a value varies with itself by its variance, with another as that one does, and with an exact one not at all',
  (model) => {
    const network = buildNetwork(tree, observeNineTips(['G', 'C'], false));
    const known = knownAtRate(network, model, 0.003);
    const at = (label: string) => network.nodeOf[nineTipsNode(label)]!;
    const [fromG, fromC] = [new Float64Array(network.parent.length), new Float64Array(network.parent.length)];
    covariancesWith(known, at('G'), fromG);
    covariancesWith(known, at('C'), fromC);
    expect(fromG[at('G')]).toBeCloseTo(beliefOf(known, { node: at('G'), upMa: 0 }).variance, 12);
    expect(fromG[at('C')]).toBeCloseTo(fromC[at('G')]!, 12);
    expect(Math.abs(fromG[at('A')]!)).toBeLessThan(1e-15);
  },
);
