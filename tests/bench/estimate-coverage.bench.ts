import { expect, test } from 'vitest';
import { estimateTrait, type TraitQuestion } from '../../analysis/estimate/index.ts';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { dateByEqualShare, dateByMinimumBranch, type DatedTree } from '../../analysis/tree/index.ts';
import { simulateData } from '../reference/simulate-brownian.ts';

const dataSets = 10_000;

/** Fewer where the tree is dated anew, a model chosen or a limit given: these are reported, not required. */
const fewerSets = 2000;

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
  count = dataSets,
): number {
  let [held, asked] = [0, 0];
  for (let set = 0; set < count; set++) {
    const random = seededRandom('coverage bench', measured, samplingShare, set);
    const { tree, observations, hidden, truth } = simulateData(measured, samplingShare, random, normalDraw);
    const question = change({ tree, observations }, { truth, hidden: tree.label[hidden]!, random });
    const answer = estimateTrait(question);
    if (!answer.estimated) continue;
    const [low, high] = answer.nodes.find(({ label }) => label === tree.label[hidden])!.interval;
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

function print(name: string, values: readonly number[]): void {
  console.log(`${name}: ${sizes.map((size, k) => `n = ${size} ${values[k]!.toFixed(3)}`).join(', ')}`);
}

test(
  'coverage of 95% intervals, tree known, by sampling deviation over the Brownian one',
  { timeout },
  () => {
    for (const samplingShare of [0, 0.1, 0.25, 0.5, 1]) {
      const values = sizes.map((size) => coverage(size, samplingShare));
      print(`sampling share ${samplingShare}`, values);
      expect(Math.min(...values)).toBeGreaterThan(0.9);
    }
  },
);

test(
  'coverage where the tree is dated by rule, the model chosen, a limit given, or a trend untold',
  { timeout },
  () => {
    print(
      'dated by equal share',
      sizes.map((size) => coverage(size, 0.1, redate('share'), fewerSets)),
    );
    print(
      'dated by shortest branch',
      sizes.map((size) => coverage(size, 0.1, redate('shortest'), fewerSets)),
    );
    print(
      'model chosen',
      sizes.map((size) => coverage(size, 0.1, (question) => ({ ...question, model: 'auto' }), fewerSets)),
    );
    const limited = sizes.map((size) =>
      coverage(
        size,
        0.1,
        (question, { truth, hidden, random }) => {
          // a threshold that knows nothing of the truth; the specimen's own value lies on one side of it
          const { observations } = question;
          const middle = observations.reduce((sum, { mean }) => sum + mean, 0) / observations.length;
          const threshold = middle + 3 * normalDraw(random);
          const side =
            truth + normalDraw(random) > threshold ? { atLeast: threshold } : { atMost: threshold };
          return { ...question, limits: [{ taxon: hidden, specimen: 'broken', ...side, twigVariance: 1 }] };
        },
        fewerSets,
      ),
    );
    print('a limit on the hidden tip', limited);
    const trended = sizes.map((size) =>
      coverage(
        size,
        0.1,
        ({ tree, observations }, { hidden }) => {
          // the same trend for all but the hidden tip is the hardest case: it is taken away from the truth instead
          const rootAge = tree.ageMa[tree.parent.length - 1]!;
          const atHidden = rootAge - tree.ageMa[tree.label.indexOf(hidden)]!;
          const slope = 2 / Math.sqrt(rootAge);
          const moved = observations.map((one) => ({
            ...one,
            mean: one.mean + slope * (rootAge - tree.ageMa[tree.label.indexOf(one.taxon)]! - atHidden),
          }));
          return { tree, observations: moved };
        },
        fewerSets,
      ),
    );
    print('a trend of two deviations a tree untold', trended);
    expect([...limited, ...trended].every(Number.isFinite)).toBe(true);
  },
);
