/*
 * Two matrices of five taxa and six characters of two states, with every one of the 15 trees without a root. `listed`: the
 * matrix and four trees in the documentation of J. Felsenstein's program for mixed parsimony, printed with 9.000 steps
 * under that program's own settings; `textbook`: Felsenstein 2004, Inferring Phylogenies, table 1.1, whose best tree has 8
 * changes (from memory). Steps and indices of the 15 trees are by enumeration in R 4.2.2. `statesAtForks`: an invented
 * character of three states; its steps are the least over every choice of states at the forks.
 */
type Row = readonly [
  tree: string,
  steps: readonly number[],
  consistency: number,
  retention: number,
  withoutUninformative: number,
];

const listedRows: readonly Row[] = [
  ['(Alpha,(((Beta,Gamma),Delta),Epsilon));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,(((Beta,Gamma),Epsilon),Delta));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,(((Beta,Epsilon),Gamma),Delta));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,(Gamma,Epsilon)),Delta));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,Gamma),(Delta,Epsilon)));', [1, 2, 1, 2, 2, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,(((Beta,Delta),Gamma),Epsilon));', [2, 2, 2, 1, 1, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,(((Beta,Delta),Epsilon),Gamma));', [2, 2, 2, 1, 1, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,(((Beta,Epsilon),Delta),Gamma));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,(Delta,Epsilon)),Gamma));', [1, 2, 1, 2, 2, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,((Beta,Delta),(Gamma,Epsilon)));', [2, 2, 2, 1, 1, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,((Beta,(Gamma,Delta)),Epsilon));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,Epsilon),(Gamma,Delta)));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,(Beta,((Gamma,Delta),Epsilon)));', [2, 1, 2, 2, 2, 1], 0.6, 0.2, 0.5555555555555556],
  ['(Alpha,(Beta,((Gamma,Epsilon),Delta)));', [2, 1, 2, 2, 2, 1], 0.6, 0.2, 0.5555555555555556],
  ['(Alpha,(Beta,(Gamma,(Delta,Epsilon))));', [1, 1, 1, 2, 2, 1], 0.75, 0.6, 0.7142857142857143],
];

const textbookRows: readonly Row[] = [
  ['(Alpha,(((Beta,Gamma),Delta),Epsilon));', [2, 2, 2, 1, 1, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,(((Beta,Gamma),Epsilon),Delta));', [2, 2, 2, 1, 1, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,(((Beta,Epsilon),Gamma),Delta));', [1, 2, 1, 2, 2, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,((Beta,(Gamma,Epsilon)),Delta));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,Gamma),(Delta,Epsilon)));', [2, 2, 2, 1, 1, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,(((Beta,Delta),Gamma),Epsilon));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,(((Beta,Delta),Epsilon),Gamma));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,(((Beta,Epsilon),Delta),Gamma));', [1, 2, 1, 2, 2, 1], 0.6666666666666666, 0.4, 0.625],
  ['(Alpha,((Beta,(Delta,Epsilon)),Gamma));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,Delta),(Gamma,Epsilon)));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,((Beta,(Gamma,Delta)),Epsilon));', [2, 1, 2, 2, 2, 1], 0.6, 0.2, 0.5555555555555556],
  ['(Alpha,((Beta,Epsilon),(Gamma,Delta)));', [1, 1, 1, 2, 2, 1], 0.75, 0.6, 0.7142857142857143],
  ['(Alpha,(Beta,((Gamma,Delta),Epsilon)));', [2, 1, 2, 2, 2, 1], 0.6, 0.2, 0.5555555555555556],
  ['(Alpha,(Beta,((Gamma,Epsilon),Delta)));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
  ['(Alpha,(Beta,(Gamma,(Delta,Epsilon))));', [2, 2, 2, 2, 2, 1], 0.5454545454545454, 0, 0.5],
];

export const parsimonyReference = {
  listed: {
    matrix: { Alpha: '110110', Beta: '110000', Gamma: '100110', Delta: '001001', Epsilon: '001110' },
    rows: listedRows,
    bestSteps: 8,
    best: '(Alpha,(Beta,(Gamma,(Delta,Epsilon))));',
    printed: {
      steps: 9,
      trees: [
        ['(((Epsilon,Gamma),(Delta,Beta)),Alpha);', [2, 2, 2, 1, 1, 1]],
        ['((Gamma,((Epsilon,Delta),Beta)),Alpha);', [1, 2, 1, 2, 2, 1]],
        ['((Epsilon,(Gamma,(Delta,Beta))),Alpha);', [2, 2, 2, 1, 1, 1]],
        ['((Gamma,(Epsilon,(Delta,Beta))),Alpha);', [2, 2, 2, 1, 1, 1]],
      ],
    },
  },
  textbook: {
    matrix: { Alpha: '100110', Beta: '001000', Gamma: '110000', Delta: '110111', Epsilon: '001110' },
    rows: textbookRows,
    bestSteps: 8,
    best: '(Alpha,((Beta,Epsilon),(Gamma,Delta)));',
  },
  /** The same for every tree of both: fewest and most steps of each character, and which can tell trees apart. */
  characters: {
    minimum: [1, 1, 1, 1, 1, 1],
    maximum: [2, 2, 2, 2, 2, 1],
    informative: [true, true, true, true, true, false],
  },
  /** Numbers of trees without a root for 3 to 6 tips (Cavalli-Sforza and Edwards 1967, Evolution 21: 550–570). */
  treeCounts: { 3: 1, 4: 3, 5: 15, 6: 105 },
  statesAtForks: {
    tree: '(O,((A,B),(C,(D,(E,F)))));',
    scored: { states: { O: '0', A: '1', B: '0', C: '1', D: '2', E: '1', F: '2' }, steps: 4 },
    oneUnsureOneUnscored: { states: { O: '0', A: '1', B: '01', C: '1', D: '', E: '1', F: '2' }, steps: 2 },
  },
} as const;
