import { expect, test } from 'vitest';
import { estimateTrait, type TraitQuestion } from '../../analysis/estimate/index.ts';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { dateByEqualShare, dateByMinimumBranch, type DatedTree } from '../../analysis/tree/index.ts';
import { simulateData } from '../reference/simulate-brownian.ts';
import { keepKnown, keepOther } from './coverage-table.ts';

const dataSets = 10_000;

/** Minutes that a simulation may take on a slow machine. */
const timeout = 30 * 60_000;
const sizes = [4, 5, 8, 12];

/** Share of data sets whose 95% interval for a hidden tip holds its true value, after a change to what is asked. */
function coverage(
  measured: number,
  samplingShare: number,
  change: (
    question: TraitQuestion,
    simulated: { truth: number; hidden: string; random: () => number },
  ) => TraitQuestion = (question) => question,
): number {
  let [held, asked] = [0, 0];
  for (let set = 0; set < dataSets; set++) {
    const random = seededRandom('coverage bench', measured, samplingShare, set);
    const { tree, observations, hidden, truth } = simulateData(measured, samplingShare, random, normalDraw);
    const label = tree.label[hidden]!;
    const question = change({ tree, observations }, { truth, hidden: label, random });
    const answer = estimateTrait({ ...question, only: [label] });
    if (!answer.estimated) continue;
    const [low, high] = answer.nodes[0]!.interval;
    held += Number(truth >= low && truth <= high);
    asked++;
  }
  return held / asked;
}

function tipAges(tree: DatedTree): Map<string, number> {
  return new Map(
    [...tree.label.entries()].flatMap(([node, label]) => (label === '' ? [] : [[label, tree.ageMa[node]!]])),
  );
}

function redate(rule: 'share' | 'shortest') {
  return ({ tree, ...rest }: TraitQuestion): TraitQuestion => {
    const rootAgeMa = tree.ageMa[tree.parent.length - 1]!;
    const dated =
      rule === 'share'
        ? dateByEqualShare(tree, tipAges(tree), rootAgeMa)
        : dateByMinimumBranch(tree, tipAges(tree), { minimumMa: 0.02 * rootAgeMa });
    return { ...rest, tree: dated };
  };
}

function told(values: readonly number[]): string {
  return sizes.map((size, k) => `n = ${size} ${values[k]!.toFixed(3)}`).join(', ');
}

/*
 * WRITE_COVERAGE=1 npm run bench -- tests/bench/estimate-coverage.bench.ts writes the table that the methods page prints; with
 * `-t` and a part of a title, only that row.
 */
test.each([0, 0.1, 0.25, 0.5, 1])(
  'coverage with the tree known, sampling deviation %d of the Brownian one',
  { timeout },
  (samplingShare) => {
    const values = sizes.map((size) => coverage(size, samplingShare));
    console.log(`sampling share ${samplingShare}: ${told(values)}`);
    keepKnown(dataSets, sizes, samplingShare, values);
    expect(Math.min(...values)).toBeGreaterThan(0.9);
  },
);

type Change = NonNullable<Parameters<typeof coverage>[2]>;

/** A threshold that knows nothing of the truth; the specimen's own value lies on one side of it. */
const withLimit: Change = (question, { truth, hidden, random }) => {
  const { observations } = question;
  const middle = observations.reduce((sum, { mean }) => sum + mean, 0) / observations.length;
  const threshold = middle + 3 * normalDraw(random);
  const side = truth + normalDraw(random) > threshold ? { atLeast: threshold } : { atMost: threshold };
  return { ...question, limits: [{ taxon: hidden, specimen: 'broken', ...side, twigVariance: 1 }] };
};

/** A trend of two deviations a tree for all but the hidden tip, the hardest case: it is taken away from the truth instead. */
const withTrend: Change = ({ tree, observations }, { hidden }) => {
  const rootAge = tree.ageMa[tree.parent.length - 1]!;
  const age = (taxon: string) => tree.ageMa[tree.label.indexOf(taxon)]!;
  const slope = 2 / Math.sqrt(rootAge);
  const moved = observations.map((one) => ({
    ...one,
    mean: one.mean + slope * (age(hidden) - age(one.taxon)),
  }));
  return { tree, observations: moved };
};

const cases = [
  ['equal-share', redate('share')],
  ['minimum-branch', redate('shortest')],
  ['model-chosen', (question) => ({ ...question, model: 'auto' })],
  ['limit', withLimit],
  ['untold-trend', withTrend],
] as const satisfies readonly (readonly [string, Change])[];

test.each(cases.flatMap(([name, change]) => sizes.map((size) => ({ name, size, change }))))(
  'coverage in another case: $name, $size measured',
  { timeout },
  ({ name, size, change }) => {
    const held = coverage(size, 0.1, change);
    console.log(`${name}: n = ${size} ${held.toFixed(3)}`);
    keepOther(name, sizes.indexOf(size), held);
    expect(held).toBeGreaterThan(0.9);
  },
);
