import { expect, test } from 'vitest';
import { estimateTips, estimateTrait } from '../../../analysis/estimate/index.ts';
import { beliefAlongBranch, beliefAt } from '../../../analysis/estimate/passes/belief.ts';
import { findFit } from '../../../analysis/estimate/rate/fit.ts';
import { makeMessages } from '../../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { passDown } from '../../../analysis/estimate/passes/pass-down.ts';
import { passUp } from '../../../analysis/estimate/passes/pass-up.ts';
import { readRelativeWeights } from '../../../analysis/estimate/relative-weights.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import nineTips from '../../reference/values/nine-tips.json' with { type: 'json' };
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import { readAtRates } from '../../../analysis/estimate/passes/per-rate.ts';

test('a point along a branch meets the estimates of the branch at its two ends', () => {
  const network = buildNetwork(tree, observe(['G'], true));
  const messages = makeMessages(network.parent.length);
  passUp(network, 0.003, messages);
  passDown(network, 0.003, messages);
  for (let node = 0; node < network.parent.length - 1; node++) {
    const length = network.branchMa[node]!;
    const bottom = beliefAlongBranch(messages, node, 0.003, 0, length);
    const top = beliefAlongBranch(messages, node, 0.003, length, 0);
    expect(bottom.mean).toBeCloseTo(beliefAt(messages, node).mean, 12);
    expect(bottom.variance).toBeCloseTo(beliefAt(messages, node).variance, 12);
    expect(top.mean).toBeCloseTo(beliefAt(messages, network.parent[node]!).mean, 12);
    expect(top.variance).toBeCloseTo(beliefAt(messages, network.parent[node]!).variance, 12);
  }
});

test('a tip on a zero twig stands for the fork it sits on', () => {
  const observations = ['A', 'B', 'C', 'D'].map((taxon, index) => ({
    taxon,
    mean: index,
    variance: index === 0 ? 0 : 0.1,
  }));
  const merged = estimateTrait({
    tree: dateAsGiven(parseNewick('((A:0,B:2)fork:3,(C:4,D:5)other:1)root;')),
    observations,
  });
  if (!merged.estimated) throw new Error(merged.reason);
  const fork = merged.nodes.find((node) => node.label === 'fork')!;
  expect(fork).toMatchObject({ median: 0, interval: [0, 0], standardDeviation: 0 });
});

test('two exact tips at distance zero are an error that names both', () => {
  const near = dateAsGiven(parseNewick('((A:0,B:0)fork:3,(C:4,D:5)other:1)root;'));
  const exact = ['A', 'B', 'C', 'D'].map((taxon, mean) => ({ taxon, mean, variance: 0 }));
  expect(() => estimateTrait({ tree: near, observations: exact })).toThrow(
    '"A" and "B" are exact and no time lies between them',
  );
  const inexact = exact.map((one) => (one.taxon === 'B' ? { ...one, variance: 0.01 } : one));
  expect(estimateTrait({ tree: near, observations: inexact }).estimated).toBe(true);
});

test('fewer than four observations and equal exact values are answered, not estimated', () => {
  const few = observe(['D', 'E', 'F', 'G', 'H', 'J'], false);
  expect(estimateTrait({ tree, observations: few })).toEqual({ estimated: false, reason: 'fewer-than-four' });
  const equal = observe([], false).map((one) => ({ ...one, mean: 2 }));
  expect(estimateTrait({ tree, observations: equal })).toEqual({
    estimated: false,
    reason: 'exact-values-equal',
  });
  const equalWithError = estimateTrait({
    tree,
    observations: equal.map((one) => ({ ...one, variance: 0.1 })),
  });
  if (!equalWithError.estimated) throw new Error(equalWithError.reason);
  expect(equalWithError.model.rateReml).toBe(0);
  expect(equalWithError.nodes.every(({ interval: [low, high] }) => low < 2 && high > 2)).toBe(true);
});

test('observations outside the tree, doubled or not finite are errors that name the taxon', () => {
  const base = observe(['G'], true);
  const wrong = (extra: object) => () =>
    estimateTrait({ tree, observations: [...base, { taxon: 'G', mean: 1, variance: 0.1, ...extra }] });
  expect(wrong({ taxon: 'X' })).toThrow('"X" is observed but is not a tip of the tree');
  expect(wrong({ taxon: 'A' })).toThrow('"A" is observed twice');
  expect(wrong({ mean: NaN })).toThrow('value of "G" must be a number, got NaN');
  expect(() => estimateTrait({ tree, observations: base, only: ['Y'] })).toThrow(
    '"Y" is to be estimated but is not a tip of the tree',
  );
  expect(wrong({ variance: -1 })).toThrow('sampling variance of "G" must be 0 or more, got -1');
});

test('weights of one fork add up to one and pass through an exact value', () => {
  const network = buildNetwork(tree, observe(['G'], false));
  const fit = findFit(network, 'brownian')!;
  for (const label of ['n1', 'n2', 'n3', 'n4', 'n5', 'n6', 'n7', 'root']) {
    const [weights] = readAtRates(
      fit,
      readRelativeWeights(fit, [network.nodeOf[tree.label.indexOf(label)]!]),
    );
    expect(weights!.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  }
});

test('hiding a taxon gives what leaving it out gives, to the last digit', () => {
  const observations = observe([], true);
  const whole = estimateTrait({ tree, observations, leaveOneOut: true });
  if (!whole.estimated) throw new Error(whole.reason);
  for (const left of whole.leaveOneOut) {
    const hidden = estimateTrait({
      tree,
      observations: observations.filter(({ taxon }) => taxon !== left.taxon),
    });
    if (!hidden.estimated) throw new Error(hidden.reason);
    const value = hidden.nodes.find(({ label }) => label === left.taxon)!;
    expect([value.median, ...value.interval]).toEqual([left.median, ...left.interval]);
    const alone = estimateTrait({
      tree,
      observations: observations.filter(({ taxon }) => taxon !== left.taxon),
      only: [left.taxon],
    });
    expect(alone).toMatchObject({ nodes: [value] });
    expect(left.inside).toBe(left.observed >= left.interval[0] && left.observed <= left.interval[1]);
    expect(left.readingInterval[1]).toBeGreaterThan(left.interval[1]);
  }
});

test.each(['brownian', 'trend'] as const)(
  'the tips asked for by %s are those of the whole answer, to the last digit',
  (model) => {
    for (const withError of [true, false]) {
      const observations = observe(['G', 'C'], withError);
      const limits = [{ taxon: 'C', specimen: 'c', atLeast: 2.9, twigVariance: 0.01 }];
      const question = { tree, observations, limits, model, only: ['G', 'C'] };
      const whole = estimateTrait(question);
      if (!whole.estimated) throw new Error(whole.reason);
      expect(estimateTips(question)).toMatchObject({ nodes: whole.nodes, treeBlind: whole.treeBlind });
    }
    expect(
      estimateTips({ tree, observations: observe(['G', 'C'], true).slice(0, 3), model, only: ['G'] }),
    ).toBeUndefined();
    const equal = observe(['G'], false).map((one) => ({ ...one, mean: 2 }));
    expect(estimateTips({ tree, observations: equal, model, only: ['G'] })).toBeUndefined();
  },
);

test('weights of several tips are those of each alone', () => {
  const fit = findFit(buildNetwork(tree, observe(['G', 'C'], true)), 'trend')!;
  const nodes = ['G', 'C'].map((label) => fit.network.nodeOf[tree.label.indexOf(label)]!);
  const weightsOf = (targets: readonly number[]) => readAtRates(fit, readRelativeWeights(fit, targets));
  expect(weightsOf(nodes)).toEqual(nodes.flatMap((node) => weightsOf([node])));
  expect(weightsOf([])).toEqual([]);
});

test('estimates do not change when the tree is written in another order', () => {
  const turned = dateAsGiven(
    parseNewick(
      '(((((H:25,E:20)n7:15,G:18)n4:8,(((C:3,B:15)n6:5,A:20)n5:15,D:5)n3:13)n2:10,F:17)n1:4,J:12)root;',
    ),
    nineTips.rootAge,
  );
  const [one, other] = [tree, turned].map((written) =>
    estimateTrait({ tree: written, observations: observe(['G'], true) }),
  );
  if (!one!.estimated || !other!.estimated) throw new Error('not estimated');
  for (const node of one!.nodes) {
    const twin = other!.nodes.find(({ label }) => label === node.label)!;
    expect(twin.median).toBeCloseTo(node.median, 10);
    expect(twin.interval[0]).toBeCloseTo(node.interval[0], 10);
  }
});
