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

/** Milliseconds of processor that a run takes, which other work on the machine moves less than the clock. */
interface Spread {
  readonly lowest: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** Quartiles and lowest of so many runs each, taken in turns; every run is repeated often enough to be measured. */
function processorMs(jobs: readonly (() => unknown)[], runs: number, repeats = 1): Spread[] {
  const times = jobs.map((): number[] => []);
  for (const job of jobs) for (let k = 0; k < 3; k++) job();
  for (let run = 0; run < runs; run++)
    jobs.forEach((job, index) => {
      const start = process.cpuUsage();
      for (let k = 0; k < repeats; k++) job();
      const { user, system } = process.cpuUsage(start);
      times[index]!.push((user + system) / 1000 / repeats);
    });
  return times.map((own) => {
    own.sort((a, b) => a - b);
    const at = (share: number) => own[Math.round(share * (own.length - 1))]!;
    return { lowest: at(0), low: at(0.25), median: at(0.5), high: at(0.75) };
  });
}

function describe({ lowest, low, median, high }: Spread): string {
  const [a, b, c, d] = [median, low, high, lowest].map((ms) => ms.toFixed(ms < 1 ? 3 : 1));
  return `median ${a} ms, quartiles ${b} to ${c}, lowest ${d}`;
}

const small = makeData(24);
const large = makeData(1000);

test('a fit with all intervals', { timeout }, () => {
  const fits = {
    '24 taxa': () => estimateTrait(small),
    '24 taxa, each also left out': () => estimateTrait({ ...small, leaveOneOut: true }),
    '1,000 taxa': () => estimateTrait(large),
  };
  const times = processorMs(Object.values(fits), 31);
  Object.keys(fits).forEach((name, k) => console.log(`${name}: ${describe(times[k]!)}`));
  expect(times).toHaveLength(3);
});

test('growth from 1,000 to 50,000 taxa', { timeout }, () => {
  const sizes = [1000, 10_000, 50_000];
  const times = processorMs(
    sizes.map((size) => {
      const data = makeData(size);
      return () => estimateTrait(data);
    }),
    15,
  );
  const exponent = (to: number, of: keyof Spread) =>
    (Math.log(times[to]![of] / times[0]![of]) / Math.log(sizes[to]! / sizes[0]!)).toFixed(2);
  times.forEach((time, k) => console.log(`${sizes[k]} taxa: ${describe(time)}`));
  for (const to of [1, 2])
    console.log(
      `growth exponent to ${sizes[to]}: by medians ${exponent(to, 'median')}, by lowest ${exponent(to, 'lowest')}`,
    );
  expect(times.every(({ lowest }) => Number.isFinite(lowest))).toBe(true);
});

test('one likelihood, by passes and by dense algebra', { timeout }, () => {
  const { tree, observations } = large;
  const network = buildNetwork(tree, observations);
  const messages = makeMessages(network.parent.length);
  const linear = processorMs([() => passUp(network, 1, messages)], 31, 100)[0]!.median;
  const byLabel = new Map(tipsOf(tree).map((tip) => [tree.label[tip]!, tip]));
  const paths = sharedPaths(
    tree,
    observations.map(({ taxon }) => byLabel.get(taxon)!),
  );
  const solve = () => {
    const covariance = new Matrix(paths);
    observations.forEach(({ variance }, k) => covariance.set(k, k, covariance.get(k, k) + variance));
    return new CholeskyDecomposition(covariance).solve(
      Matrix.columnVector(observations.map(({ mean }) => mean)),
    );
  };
  const dense = processorMs([solve], 15)[0]!.median;
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
  const limits = [{ taxon: 't0', specimen: 'broken', atLeast: 0, twigVariance: 1 }];
  const [plain, limited] = processorMs(
    [() => spanOver(question), () => spanOver({ ...question, limits })],
    15,
  );
  console.log(`1,200 datings of 24 taxa: ${describe(plain!)}; with a limit: ${describe(limited!)}`);
  expect(plain!.median).toBeGreaterThan(0);
});
