import {
  changeLikelihood,
  changeProbabilities,
  equalRates,
  findBestChangeRate,
  gainAndLossRates,
  orderedRates,
  type Character,
} from '../../analysis/characters/index.ts';
import { parseNewick } from '../../analysis/tree/index.ts';
import { holdToAccount, type Part } from './account.ts';
import known from './values/state-changes.json' with { type: 'json' };

const tree = parseNewick(known.newick);
const forks = ['root', 'n1', 'n2', 'n3', 'n4'];
const allStates = ['0', '1', '2'];

type Case = (typeof known.cases)[number];

/** Tips as the file has them: a state, one of two, or a question mark. */
function characterOf(tips: Readonly<Record<string, string | readonly string[]>>): Character {
  return new Map(Object.entries(tips).map(([tip, own]) => [tip, own === '?' ? [] : [own].flat()]));
}

function questionOf(one: Case) {
  const { model, tips, pi } = one;
  const states = allStates.slice(0, model.includes('k=3') ? 3 : 2);
  const base = { tree, character: characterOf(tips), states };
  if ('a' in one) {
    const [gain, loss] = [one.a!, one.b!];
    const stationary = [loss / (gain + loss), gain / (gain + loss)];
    const rates = gainAndLossRates(gain, loss);
    return pi === 'equal' ? { ...base, rates } : { ...base, rates, rootShares: stationary };
  }
  const ratesOf = model.startsWith('ordered') ? orderedRates : equalRates;
  return { ...base, rates: ratesOf(states.length, one.q!) };
}

function answerOf(question: Parameters<typeof changeLikelihood>[0]): Record<string, Part> {
  const { logLikelihood, probabilities, bestHistory } = changeLikelihood(question);
  const byFork = <T>(of: (node: number) => T) =>
    Object.fromEntries(forks.map((fork) => [fork, of(tree.label.indexOf(fork))]));
  return {
    logLik: logLikelihood,
    marginal: byFork((node) =>
      Object.fromEntries(question.states.map((state, k) => [state, probabilities[node]![k]!])),
    ),
    jointBest: byFork((node) => question.states[bestHistory.stateAt[node]!]!),
    jointBestLogLik: bestHistory.logLikelihood,
  };
}

const twoStates = (tips: Readonly<Record<string, string>>) => ({
  tree,
  character: characterOf(tips),
  states: ['0', '1'],
});

/** Likelihoods along the rate, for the pattern of some tips. */
function along({
  tips,
  logLikAt,
}: {
  readonly tips: Readonly<Record<string, string>>;
  readonly logLikAt: readonly { readonly q: number }[];
}): Part {
  return logLikAt.map(({ q }) => ({
    q,
    ll: changeLikelihood({ ...twoStates(tips), rates: equalRates(2, q) }).logLikelihood,
  }));
}

const { interior, runsToInfinity } = known.bestEqualRate;
const tableOf = (rates: Parameters<typeof changeProbabilities>[0]) =>
  changeProbabilities(rates, 10).map((row) => Array.from(row));

holdToAccount({
  name: 'state changes',
  values: known,
  given: [
    'newick',
    'cases/*/model',
    'cases/*/pi',
    'cases/*/q',
    'cases/*/a',
    'cases/*/b',
    'cases/*/tips',
    'bestEqualRate/*/tips',
  ],
  described: { 'bestEqualRate/*/note': 'what the case is there to show' },
  checks: [
    {
      claim: 'likelihoods, states at forks and the most likely history under eight models and scorings',
      at: 'cases',
      within: 1e-12,
      answer: () => known.cases.map((one) => answerOf(questionOf(one))),
    },
    {
      claim: 'likelihoods along the rate, and the states at the best one',
      at: 'bestEqualRate',
      within: 1e-12,
      answer: () => {
        const best = answerOf({ ...twoStates(interior.tips), rates: equalRates(2, interior.q) });
        return {
          interior: { logLikAt: along(interior), marginal: best['marginal'], logLik: best['logLik'] },
          runsToInfinity: { logLikAt: along(runsToInfinity) },
        };
      },
    },
    {
      claim: 'a rate of largest likelihood, and characters that have none',
      at: 'bestEqualRate',
      within: 1e-6,
      answer: () => {
        const constant = Object.fromEntries(Object.keys(interior.tips).map((tip) => [tip, '0']));
        const [found, endless, still] = [interior.tips, runsToInfinity.tips, constant].map((tips) =>
          findBestChangeRate(twoStates(tips), equalRates),
        );
        return {
          interior: { q: found!.rate, logLik: found!.logLikelihood },
          runsToInfinity: { limit: endless!.onBound === 'no-end' ? endless!.logLikelihood : NaN },
          constantCharacter: { limit: still!.onBound === 'no-change' ? still!.logLikelihood : NaN },
        };
      },
    },
    {
      claim: 'probabilities of change over ten million years, as matrices and by the closed forms',
      at: 'transitionMatrices',
      within: 1e-13,
      answer: () => {
        const [two, three, own] = [
          equalRates(2, 0.02),
          equalRates(3, 0.02),
          gainAndLossRates(0.03, 0.01),
        ].map(tableOf);
        return {
          'equal2_q0.02_t10': two,
          equal2_closed: two![0],
          'equal3_q0.02_t10': three,
          equal3_closed: three![0]!.slice(0, 2),
          'ownRates_a0.03_b0.01_t10': own,
          ownRates_closed: { P01: own![0]![1]!, P10: own![1]![0]! },
          'ordered3_q0.02_t10': tableOf(orderedRates(3, 0.02)),
        };
      },
    },
  ],
});
