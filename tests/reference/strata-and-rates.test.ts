import {
  findLastOccurrenceLimit,
  findRangeExtension,
  findTwoEndedExtension,
} from '../../analysis/ages/index.ts';
import { seededRandom } from '../../analysis/random/index.ts';
import { childrenOf, isTip, parseNewick } from '../../analysis/tree/index.ts';
import {
  congruenceOf,
  darwins,
  haldanes,
  pooledLogDeviation,
  type FindRange,
} from '../../analysis/trend/index.ts';
import { holdToAccount, type Part } from './account.ts';
import known from './values/strata-and-rates.json' with { type: 'json' };

const { rates, straussSadler, congruence } = known;

function ratesAnswer(): Part {
  const earlier = { mean: rates.x1, logDeviation: rates.sdLn1, n: rates.n1 };
  const later = { mean: rates.x2, logDeviation: rates.sdLn2, n: rates.n2 };
  const generations = (rates.dt_Myr * 1e6) / rates.generationTimeYears;
  const [change, perGeneration] = [
    darwins(earlier, later, rates.dt_Myr),
    haldanes(earlier, later, generations),
  ];
  return {
    darwins: change.rate,
    sedarwin: change.standardError,
    pooledSD: pooledLogDeviation(earlier, later),
    generations: perGeneration.interval,
    haldanes: perGeneration.rate,
    haldane_numerator: perGeneration.rate * generations,
    log10I: Math.log10(perGeneration.interval),
    log10R: Math.log10(perGeneration.rate),
  };
}

/** Share of drawn ranges whose true end lies within the extension of the younger end at 95%. */
function heldExtension(horizons: number, reps: number): number {
  const random = seededRandom('extension');
  let held = 0;
  for (let rep = 0; rep < reps; rep++) {
    // the true last occurrence is the present, so that the limit holds it where it reaches 0
    const finds = Array.from({ length: horizons }, () => 100 * random());
    const [firstMa, lastMa] = [Math.max(...finds), Math.min(...finds)];
    const { extensionMa } = findLastOccurrenceLimit({ firstMa, lastMa, horizons }, 0.95)!;
    held += Number(lastMa - extensionMa <= 0);
  }
  return held / reps;
}

const tree = parseNewick(congruence.tree);
const tips = Object.keys(congruence.FAD) as (keyof typeof congruence.FAD)[];
const rangesOf = (firsts: readonly number[]) =>
  new Map(tips.map((tip, k): [string, FindRange] => [tip, { firstMa: firsts[k]!, lastMa: -Infinity }]));
const ranges = new Map(
  tips.map((tip): [string, FindRange] => [
    tip,
    { firstMa: congruence.FAD[tip], lastMa: congruence.LAD[tip] },
  ]),
);
const found = congruenceOf(tree, ranges);

/** Names of the tips under a node, joined as the file joins them. */
function nameOf(node: number): string {
  return isTip(tree, node) ? tree.label[node]! : childrenOf(tree, node).map(nameOf).sort().join('+');
}

/** Oldest first find under a node. */
function oldest(node: number): number {
  return Math.max(
    ...nameOf(node)
      .split('+')
      .map((tip) => ranges.get(tip)!.firstMa),
  );
}

/** Forks but the root, from the root outwards as the file has them. */
function forks(node: number): number[] {
  return childrenOf(tree, node).flatMap((child) => (isTip(tree, child) ? [] : [child, ...forks(child)]));
}

function congruenceAnswer(): Part {
  const places = new Map(congruence.ghosts.map(({ taxon }, k) => [taxon, k]));
  const ghosts = found.ghosts
    .map(({ node, fromMa, toMa }) => ({ taxon: nameOf(node), from: fromMa, to: toMa, length: fromMa - toMa }))
    .sort((a, b) => places.get(a.taxon)! - places.get(b.taxon)!);
  const firsts = tips.map((tip) => congruence.FAD[tip]);
  return {
    ghosts,
    MIG: found.gapMyr,
    SRL: tips.reduce((sum, tip) => sum + congruence.FAD[tip] - congruence.LAD[tip], 0),
    RCI: found.completeness,
    Gmin: found.gapRatio * found.gapMyr,
    Gmax: firsts.reduce((sum, first) => sum + Math.max(...firsts) - first, 0),
    GER: found.gapExcessRatio,
    MSMstar: found.gapRatio,
    SCI: found.consistency,
    nodesExcludingRoot: forks(tree.parent.length - 1).map((node) => {
      const sister = childrenOf(tree, tree.parent[node]!).find((other) => other !== node)!;
      return {
        node: nameOf(node),
        oldest: oldest(node),
        sisterOldest: oldest(sister),
        consistent: oldest(node) <= oldest(sister),
      };
    }),
  };
}

/** Every order of some values. */
function orders(values: readonly number[]): number[][] {
  return values.length < 2
    ? [[...values]]
    : values.flatMap((value, k) => orders(values.toSpliced(k, 1)).map((rest) => [value, ...rest]));
}

function allDeals(): Part {
  const gaps = orders(tips.map((tip) => congruence.FAD[tip])).map(
    (deal) => congruenceOf(tree, rangesOf(deal)).gapMyr,
  );
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  const share = (of: (gap: number) => boolean) => gaps.filter(of).length / gaps.length;
  return {
    nPerm: gaps.length,
    minMIG: least,
    maxMIG: most,
    meanMIG: gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length,
    propPermWithMIGgreaterOrEqual: share((gap) => gap >= found.gapMyr),
    propStrictlyGreater_GERstar: share((gap) => gap > found.gapMyr),
    GERt: 1 - (found.gapMyr - least) / (most - least),
  };
}

holdToAccount({
  name: 'strata and rates',
  values: known,
  given: [
    'rates/x1',
    'rates/x2',
    'rates/dt_Myr',
    'rates/sdLn1',
    'rates/sdLn2',
    'rates/n1',
    'rates/n2',
    'rates/generationTimeYears',
    'straussSadler/oneEnd/*/H',
    'straussSadler/bothEnds/*/H',
    'straussSadler/example/FAD',
    'straussSadler/example/LAD',
    'straussSadler/example/H',
    'straussSadler/example/C',
    'congruence/tree',
    'congruence/FAD',
    'congruence/LAD',
  ],
  described: {
    'rates/doubling': 'a remark on what a darwin is',
    'straussSadler/example/unbiasedGapEstimate':
      'a mean gap, of which the engine says nothing: it gives limits at a confidence',
    'straussSadler/simCoverage_H9/reps': 'draws of the reference',
  },
  checks: [
    { claim: 'rates of change in darwins and haldanes', at: 'rates', within: 1e-13, answer: ratesAnswer },
    {
      claim: 'extensions of one end, thirteen numbers of horizons at four confidences',
      at: 'straussSadler/oneEnd',
      within: 1e-12,
      answer: () =>
        straussSadler.oneEnd.map(({ H }) =>
          Object.fromEntries(
            [50, 90, 95, 99].map((percent) => [`C${percent}`, findRangeExtension(H, percent / 100)!]),
          ),
        ),
    },
    {
      claim: 'extensions of both ends',
      at: 'straussSadler/bothEnds',
      within: 1e-12,
      answer: () => straussSadler.bothEnds.map(({ H }) => ({ C95: findTwoEndedExtension(H, 0.95)! })),
    },
    {
      claim: 'a last find with its limit',
      at: 'straussSadler/example',
      within: 1e-13,
      answer: () => {
        const { FAD, LAD, H, C } = straussSadler.example;
        const limit = findLastOccurrenceLimit({ firstMa: FAD, lastMa: LAD, horizons: H }, C)!;
        return {
          R: FAD - LAD,
          extension: limit.extensionMa,
          youngestBound: limit.youngestMa,
          oldestBound: FAD + limit.extensionMa,
        };
      },
    },
    {
      claim: 'the limit holds the true end as often as in the reference’s draws, to chance',
      at: 'straussSadler/simCoverage_H9',
      within: 0.008,
      answer: () => ({ coverage: heldExtension(9, 40_000) }),
    },
    {
      claim: 'ghost ranges and indices of a tree against finds',
      at: 'congruence',
      within: 1e-13,
      answer: congruenceAnswer,
    },
    {
      claim: 'the same over all 720 deals of the finds',
      at: 'congruence/permutation',
      within: 1e-13,
      answer: allDeals,
    },
  ],
});
