import {
  cheapestHistories,
  fitMatrix,
  irreversibleCost,
  orderedCost,
  unorderedCost,
  type ChangeCost,
  type Character,
} from '../../analysis/characters/index.ts';
import { childrenOf, isTip, parseNewick, type Tree } from '../../analysis/tree/index.ts';
import { holdToAccount, type Check, type Part } from './account.ts';
import { charactersOf } from './character-rows.ts';
import { everyTree } from './every-tree.ts';
import known from './values/parsimony.json' with { type: 'json' };

type Matrix = (typeof known.matrix1)['matrix'];
interface Row {
  readonly tree: string;
}

function rowAnswer(matrix: Matrix, { tree }: Row): Part {
  const [parsed, columns] = [parseNewick(`${tree};`), charactersOf(matrix)];
  const fit = fitMatrix(parsed, columns);
  return {
    tree,
    stepsPerCharacter: fit.characters.map(({ steps }) => steps),
    length: fit.steps,
    m: fit.characters.map(({ minimum }) => minimum),
    g: fit.characters.map(({ maximum }) => maximum),
    ciPerCharacter: fit.characters.map(({ consistency }) => consistency),
    riPerCharacter: fit.characters.map(({ retention }) => retention),
    CI: fit.consistency,
    RI: fit.retention,
    RC: fit.consistency! * fit.retention!,
    HI: 1 - fit.consistency!,
    informative: fit.characters.flatMap(({ informative }, k) => (informative ? [k + 1] : [])),
    CI_informativeOnly: fitMatrix(parsed, columns, { informativeOnly: true }).consistency,
  };
}

/** The shortest of all trees of a matrix, found by counting on every one. */
function shortest(matrix: Matrix) {
  const columns = charactersOf(matrix);
  const lengths = everyTree(Object.keys(matrix)).map((tree) => fitMatrix(tree, columns).steps);
  const least = Math.min(...lengths);
  return { trees: lengths.length, least, best: lengths.filter((length) => length === least).length };
}

const rowsOf = (
  name: 'matrix1' | 'matrix2',
  list: 'allTrees' | 'best' | 'treesListedInDocumentation',
  rows: readonly Row[],
): Check => ({
  claim: `${name}, ${list}: steps and indices of ${rows.length === 1 ? 'the tree' : `${rows.length} trees`}`,
  at: `${name}/${list}`,
  within: 1e-14,
  answer: () => rows.map((row) => rowAnswer(known[name].matrix, row)),
});

type Tips = Readonly<Record<string, string | readonly string[]>>;

const characterOfTips = (tips: Tips): Character =>
  new Map(Object.entries(tips).map(([tip, own]) => [tip, [own].flat()]));
const threeStates = ['0', '1', '2'];
const costs = { unordered: unorderedCost, ordered: orderedCost, irreversible: irreversibleCost };
const forkTree = parseNewick(`${known.mpr.tree};`);

/** Forks by the text that the file names them by. */
const forkNames = forksOf(forkTree.parent.length - 1);

function forksOf(node: number): [name: string, node: number][] {
  return isTip(forkTree, node) ? [] : [[textOf(node), node], ...childrenOf(forkTree, node).flatMap(forksOf)];
}

function textOf(node: number): string {
  return isTip(forkTree, node)
    ? forkTree.label[node]!
    : `(${childrenOf(forkTree, node).map(textOf).join(',')})`;
}

/** Every choice of one state a fork, from those that each may have. */
function choices(forks: readonly (readonly [string, readonly string[]])[]): Record<string, string>[] {
  const [first, ...rest] = forks;
  if (!first) return [{}];
  return first[1].flatMap((state) => choices(rest).map((others) => ({ [first[0]]: state, ...others })));
}

/** Cost of one choice of states at the forks: the least that the tips leave, with every fork held. */
function costOfChoice(choice: Readonly<Record<string, string>>, tips: Tips, cost: ChangeCost): number {
  const stateOf = new Map(forkNames.map(([name, node]) => [node, threeStates.indexOf(choice[name]!)]));
  return forkNames.reduce((sum, [, node]) => {
    const from = stateOf.get(node)!;
    const branches = childrenOf(forkTree, node).map((child) => {
      const to = stateOf.has(child)
        ? [stateOf.get(child)!]
        : [tips[forkTree.label[child]!]!].flat().map(Number);
      return Math.min(...to.map((state) => cost(from, state)));
    });
    return sum + branches.reduce((all, branch) => all + branch, 0);
  }, 0);
}

interface KnownHistories {
  readonly allMPRs: readonly Readonly<Record<string, string>>[];
}

function histories(tips: Tips, cost: ChangeCost, { allMPRs }: KnownHistories): Part {
  const found = cheapestHistories(forkTree, characterOfTips(tips), { states: threeStates, cost });
  const sets = forkNames.map(([name, node]) => [name, found.statesAt[node]!] as const);
  const cheapest = choices(sets).filter((choice) => costOfChoice(choice, tips, cost) === found.cost);
  const order = allMPRs.map((each) => JSON.stringify(forkNames.map(([name]) => each[name])));
  const placeOf = (choice: Readonly<Record<string, string>>) =>
    order.indexOf(JSON.stringify(forkNames.map(([name]) => choice[name])));
  return {
    minCost: found.cost,
    nMPR: found.count,
    // the file writes a set of one as its state
    sets: Object.fromEntries(sets.map(([name, states]) => [name, states.length === 1 ? states[0]! : states])),
    allMPRs: cheapest.sort((a, b) => placeOf(a) - placeOf(b)),
  };
}

function mprAnswer(): Part {
  const { tips, unordered, ordered, irreversible, withMissingD_polymorphicB: unsure } = known.mpr;
  return {
    unordered: histories(tips, costs.unordered, unordered),
    ordered: histories(tips, costs.ordered, ordered),
    irreversible: histories(tips, costs.irreversible, irreversible),
    withMissingD_polymorphicB: {
      unordered: histories(unsure.tips, costs.unordered, unsure.unordered),
      ordered: histories(unsure.tips, costs.ordered, unsure.ordered),
    },
  };
}

function nucleotides(): Part {
  const { order, tree } = known.sankoff;
  const ring = ['AG', 'GA', 'CT', 'TC'];
  const cost: ChangeCost = (above, below) =>
    above === below ? 0 : ring.includes(order[above]! + order[below]!) ? 1 : 2.5;
  // the two C and the two A of the tree are tips of their own
  const named = parseNewick(`${tree.replace('((C,A),(C,(A,G)))', '((C1,A1),(C2,(A2,G)))')};`);
  const character = new Map(['C1', 'A1', 'C2', 'A2', 'G'].map((tip) => [tip, [tip[0]!]]));
  const found = cheapestHistories(named, character, { states: order, cost });
  const fork = (...tips: string[]) => Array.from(found.costBelow[forkAbove(named, tips)]!);
  return {
    CA: fork('C1', 'A1'),
    AG: fork('A2', 'G'),
    C_AG: fork('C2', 'G'),
    root: fork('C1', 'G'),
    minCost: found.cost,
  };
}

/** Youngest fork over some tips. */
function forkAbove(tree: Tree, tips: readonly string[]): number {
  const above = (node: number): number[] => (node === -1 ? [] : [node, ...above(tree.parent[node]!)]);
  const [first, ...rest] = tips.map((tip) => above(tree.label.indexOf(tip)));
  return first!.find((node) => rest.every((others) => others.includes(node)))!;
}

holdToAccount({
  name: 'parsimony',
  values: known,
  given: [
    '*/matrix',
    'sankoff/order',
    'sankoff/tree',
    'mpr/tree',
    'mpr/tips',
    'mpr/withMissingD_polymorphicB/tips',
  ],
  described: {
    'sankoff/costs': 'the costs in words',
    'mpr/withMissingD_polymorphicB/note': 'how unsure tips are read',
  },
  checks: [
    rowsOf('matrix1', 'allTrees', known.matrix1.allTrees),
    rowsOf('matrix1', 'best', known.matrix1.best),
    rowsOf('matrix1', 'treesListedInDocumentation', known.matrix1.treesListedInDocumentation),
    rowsOf('matrix2', 'allTrees', known.matrix2.allTrees),
    rowsOf('matrix2', 'best', known.matrix2.best),
    {
      claim: 'the shortest of all fifteen trees of both matrices',
      within: 0,
      answer: () => {
        const [one, two] = [shortest(known.matrix1.matrix), shortest(known.matrix2.matrix)];
        return { matrix1: { minLength: one.least, nBest: one.best }, matrix2: { minLength: two.least } };
      },
    },
    { claim: 'costs of nucleotides by state, fork by fork', at: 'sankoff', within: 0, answer: nucleotides },
    { claim: 'states at the forks in all cheapest histories', at: 'mpr', within: 0, answer: mprAnswer },
  ],
});
