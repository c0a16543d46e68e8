import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { drawAges, type HorizonAge } from '../../analysis/ages/index.ts';
import { estimateTrait, spanOver, type Observation } from '../../analysis/estimate/index.ts';
import { makeMessages } from '../../analysis/estimate/messages.ts';
import { buildNetwork } from '../../analysis/estimate/network.ts';
import { passUp } from '../../analysis/estimate/pass-up.ts';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { tipsOf, type DatedTree } from '../../analysis/tree/index.ts';
import { sharedPaths } from '../reference/dense-brownian.ts';
import { randomTree } from '../reference/random-tree.ts';

/** Minutes that a measurement may take on a slow machine. */
const timeout = 10 * 60_000;

/** A random tree of tips of many ages, all but one measured, with a sampling variance of 1. */
function makeData(tips: number): { tree: DatedTree; observations: Observation[] } {
  const random = seededRandom('estimate bench', tips);
  const tree = randomTree(tips, random);
  const values = new Float64Array(tree.parent.length);
  for (let node = values.length - 2; node >= 0; node--)
    values[node] = values[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normalDraw(random);
  const observations = tipsOf(tree)
    .slice(1)
    .map((tip) => ({ taxon: tree.label[tip]!, mean: values[tip]! + normalDraw(random), variance: 1 }));
  return { tree, observations };
}

/** Median of the milliseconds that so many runs take, after as many to warm up as it needs. */
function medianMs(run: () => unknown, runs: number): number {
  for (let k = 0; k < Math.min(3, runs); k++) run();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(runs / 2)]!;
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
    return medianMs(() => estimateTrait(data), size > 10_000 ? 3 : 7);
  });
  const exponent = Math.log(times.at(-1)! / times[0]!) / Math.log(sizes.at(-1)! / sizes[0]!);
  console.log(
    sizes.map((size, k) => `${size} taxa: ${times[k]!.toFixed(0)} ms`).join(', '),
    `exponent ${exponent.toFixed(2)}`,
  );
  expect(times.every(Number.isFinite)).toBe(true);
});

test('one likelihood, by passes and by dense algebra', { timeout }, () => {
  const { tree, observations } = large;
  const network = buildNetwork(tree, observations);
  const messages = makeMessages(network.parent.length);
  const linear = medianMs(() => passUp(network, 1, messages), 200);
  const byLabel = new Map(tipsOf(tree).map((tip) => [tree.label[tip]!, tip]));
  const paths = sharedPaths(
    tree,
    observations.map(({ taxon }) => byLabel.get(taxon)!),
  );
  const dense = medianMs(() => {
    const covariance = new Matrix(paths);
    observations.forEach(({ variance }, k) => covariance.set(k, k, covariance.get(k, k) + variance));
    return new CholeskyDecomposition(covariance).solve(
      Matrix.columnVector(observations.map(({ mean }) => mean)),
    );
  }, 3);
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
  const plain = medianMs(() => spanOver(question), 3);
  const limits = [{ taxon: 't0', specimen: 'broken', atLeast: 0, twigVariance: 1 }];
  const limited = medianMs(() => spanOver({ ...question, limits }), 3);
  console.log(`1,200 datings of 24 taxa: ${plain.toFixed(0)} ms, with a limit ${limited.toFixed(0)} ms`);
  expect(plain).toBeGreaterThan(0);
});
