import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { drawAges, type HorizonAge } from '../../analysis/ages/index.ts';
import { estimateTrait, spanOver, type Observation } from '../../analysis/estimate/index.ts';
import { makeMessages } from '../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../analysis/estimate/passes/network.ts';
import { passUp } from '../../analysis/estimate/passes/pass-up.ts';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { dateAsGiven, parseNewick, tipsOf, writeNewick, type DatedTree } from '../../analysis/tree/index.ts';
import { sharedPaths } from '../reference/dense-brownian.ts';
import { randomTree } from '../reference/random-tree.ts';

/** Minutes that a measurement may take on a slow machine. */
const timeout = 10 * 60_000;

/** A random tree of tips of many ages, all but one measured, with a sampling variance of 1. */
function makeData(tips: number): { tree: DatedTree; observations: Observation[] } {
  const random = seededRandom('estimate bench', tips);
  // written and read again, so that nodes lie in memory as those of a file do
  const tree = dateAsGiven(parseNewick(writeNewick(randomTree(tips, random))));
  const values = new Float64Array(tree.parent.length);
  for (let node = values.length - 2; node >= 0; node--)
    values[node] = values[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normalDraw(random);
  const observations = tipsOf(tree)
    .slice(1)
    .map((tip) => ({ taxon: tree.label[tip]!, mean: values[tip]! + normalDraw(random), variance: 1 }));
  return { tree, observations };
}

/** Milliseconds that a run takes: the median of so many, and the lowest, which other work on the machine moves less. */
function timeMs(run: () => unknown, runs: number): { readonly median: number; readonly lowest: number } {
  for (let k = 0; k < Math.min(3, runs); k++) run();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { median: times[Math.floor(runs / 2)]!, lowest: times[0]! };
}

const small = makeData(24);
const large = makeData(1000);

test('a fit with all intervals', { timeout }, async ({ bench }) => {
  await bench('24 taxa', () => void estimateTrait(small)).run();
  await bench('24 taxa, each also left out', () => void estimateTrait({ ...small, leaveOneOut: true })).run();
  await bench('1,000 taxa', () => void estimateTrait(large)).run();
});

test('growth from 1,000 to 50,000 taxa', { timeout }, () => {
  const sizes = [1000, 5000, 20_000, 50_000];
  const times = sizes.map((size) => {
    const data = makeData(size);
    return timeMs(() => estimateTrait(data), size > 10_000 ? 5 : 15);
  });
  const exponent = (of: 'median' | 'lowest') =>
    (Math.log(times.at(-1)![of] / times[0]![of]) / Math.log(sizes.at(-1)! / sizes[0]!)).toFixed(2);
  for (const [k, { median, lowest }] of times.entries())
    console.log(`${sizes[k]} taxa: median ${median.toFixed(0)} ms, lowest ${lowest.toFixed(0)} ms`);
  console.log(`growth exponent: by medians ${exponent('median')}, by lowest ${exponent('lowest')}`);
  expect(times.every(({ lowest }) => Number.isFinite(lowest))).toBe(true);
});

test('one likelihood, by passes and by dense algebra', { timeout }, () => {
  const { tree, observations } = large;
  const network = buildNetwork(tree, observations);
  const messages = makeMessages(network.parent.length);
  const linear = timeMs(() => passUp(network, 1, messages), 200).median;
  const byLabel = new Map(tipsOf(tree).map((tip) => [tree.label[tip]!, tip]));
  const paths = sharedPaths(
    tree,
    observations.map(({ taxon }) => byLabel.get(taxon)!),
  );
  const dense = timeMs(() => {
    const covariance = new Matrix(paths);
    observations.forEach(({ variance }, k) => covariance.set(k, k, covariance.get(k, k) + variance));
    return new CholeskyDecomposition(covariance).solve(
      Matrix.columnVector(observations.map(({ mean }) => mean)),
    );
  }, 3).median;
  console.log(
    `1,000 taxa, one likelihood: passes ${linear.toFixed(3)} ms, dense algebra ${dense.toFixed(0)} ms, ${(dense / linear).toFixed(0)} times`,
  );
  expect(linear).toBeLessThan(dense);
});

test('spans over 3 trees, 2 dating rules and 200 draws of 24 taxa', { timeout }, () => {
  const trees = [1, 2, 3].map((k) => randomTree(24, seededRandom('span bench', k)));
  const beds = new Map<string, HorizonAge>(
    Array.from({ length: 24 }, (_, tip) => [`t${tip}`, { kind: 'uniform', fromMa: tip + 5, toMa: tip }]),
  );
  const hypotheses = trees.flatMap((tree, k) => [
    { id: `tree ${k} share`, tree, dating: { rule: 'equal-share' as const, rootAgeMa: 60 } },
    { id: `tree ${k} shortest`, tree, dating: { rule: 'minimum-branch' as const, minimumMa: 1 } },
  ]);
  const question = {
    hypotheses,
    tipAgesOfDraw: (draw: number) => drawAges({ beds, below: new Map() }, 1, draw),
    draws: 200,
    observations: small.observations,
    taxa: ['t0'],
  };
  const plain = timeMs(() => spanOver(question), 3).median;
  const limits = [{ taxon: 't0', specimen: 'broken', atLeast: 0, twigVariance: 1 }];
  const limited = timeMs(() => spanOver({ ...question, limits }), 3).median;
  console.log(`1,200 datings of 24 taxa: ${plain.toFixed(0)} ms, with a limit ${limited.toFixed(0)} ms`);
  expect(plain).toBeGreaterThan(0);
});
