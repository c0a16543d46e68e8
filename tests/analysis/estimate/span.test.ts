import { expect, test } from 'vitest';
import { drawAges, type HorizonAge } from '../../../analysis/ages/index.ts';
import {
  branchesAt,
  estimateTrait,
  findPointEstimates,
  findTreeBlindInterval,
  spanOver,
  statusOf,
} from '../../../analysis/estimate/index.ts';
import { studentQuantile } from '../../../analysis/statistics/index.ts';
import { dateByEqualShare, parseNewick } from '../../../analysis/tree/index.ts';

// an invented tree of seven tips in beds of known range
const tree = parseNewick('((a,(b,c)),((d,e),(f,g)));');
const rival = parseNewick('(((a,b),c),((d,f),(e,g)));');
const beds = new Map<string, HorizonAge>(
  ['a', 'b', 'c', 'd', 'e', 'f'].map((id, index) => [
    id,
    { kind: 'uniform', fromMa: 30 - index, toMa: 24 - 2 * index },
  ]),
);
const observations = ['a', 'b', 'd', 'e', 'f', 'g'].map((taxon, index) => ({
  taxon,
  mean: 3 + index,
  variance: 0.05,
}));

const tipAgesOfDraw = (draw: number) =>
  new Map([...drawAges({ beds, below: new Map() }, 'span', draw), ['g', 0]]);
const question = {
  hypotheses: [
    { id: 'main share', tree, dating: { rule: 'equal-share', rootAgeMa: 40 } },
    { id: 'main shortest', tree, dating: { rule: 'minimum-branch', minimumMa: 1 } },
    { id: 'rival share', tree: rival, dating: { rule: 'equal-share', rootAgeMa: 40 } },
  ],
  tipAgesOfDraw,
  draws: 20,
  observations,
  taxa: ['c', 'x'],
} as const;

test('a span holds the value of every dating that it is over', () => {
  const answer = spanOver(question);
  const [span] = answer.spans;
  expect(answer).toMatchObject({ tried: 60, failed: [] });
  expect(span).toMatchObject({ taxon: 'c', over: 60 });
  for (const draw of [0, 7, 19]) {
    const one = estimateTrait({ tree: dateByEqualShare(tree, tipAgesOfDraw(draw), 40), observations });
    if (!one.estimated) throw new Error(one.reason);
    const { median, interval } = one.nodes[tree.label.indexOf('c')]!;
    expect(median).toBeGreaterThanOrEqual(span!.middle[0]);
    expect(median).toBeLessThanOrEqual(span!.middle[1]);
    expect(interval[0]).toBeGreaterThanOrEqual(span!.interval[0]);
    expect(interval[1]).toBeLessThanOrEqual(span!.interval[1]);
  }
});

test('the same seed gives the same span, and a taxon that no tree has gets none', () => {
  expect(spanOver(question)).toEqual(spanOver(question));
  expect(spanOver(question).spans.map(({ taxon }) => taxon)).toEqual(['c']);
});

test('datings that cannot be made are counted with their reason', () => {
  const tight = {
    ...question,
    hypotheses: [{ id: 'tight', tree, dating: { rule: 'equal-share', rootAgeMa: 27 } }],
  } as const;
  const { failed, spans } = spanOver(tight);
  expect(failed[0]).toMatchObject({ hypothesis: 'tight' });
  expect(failed[0]!.reason).toContain('root age must be at least');
  expect(failed[0]!.count + spans[0]!.over).toBe(20);
});

test('a span keeps limits in', () => {
  const limits = [{ taxon: 'c', specimen: 'c-1', atLeast: 6, twigVariance: 0.1 }];
  expect(spanOver({ ...question, limits }).spans[0]!.middle[0]).toBeGreaterThan(
    spanOver(question).spans[0]!.middle[0],
  );
});

test('a line across the tree cuts every branch that lives at its age, each with an estimate', () => {
  const dated = dateByEqualShare(tree, tipAgesOfDraw(0), 40);
  expect(branchesAt(dated, 39.9)).toHaveLength(2);
  expect(branchesAt(dated, 0).map((node) => dated.label[node])).toEqual(['g']);
  expect(branchesAt(dated, 41)).toEqual([]);
  const cut = branchesAt(dated, 28);
  const values = findPointEstimates(
    { tree: dated, observations },
    cut.map((node) => ({ node, ageMa: 28 })),
  )!;
  expect(values).toHaveLength(cut.length);
  const whole = estimateTrait({ tree: dated, observations });
  if (!whole.estimated) throw new Error(whole.reason);
  for (const node of cut) {
    const at = findPointEstimates({ tree: dated, observations }, [{ node, ageMa: dated.ageMa[node]! }])![0]!;
    expect(at.median).toBeCloseTo(whole.nodes[node]!.median, 12);
  }
  expect(() => findPointEstimates({ tree: dated, observations }, [{ node: cut[0]!, ageMa: 41 }])).toThrow(
    'is not on the branch',
  );
  expect(findPointEstimates({ tree: dated, observations: observations.slice(0, 3) }, [])).toBeUndefined();
});

test('the interval without a tree is that of one more value of the same kind', () => {
  const [low, high] = findTreeBlindInterval([1, 2, 3, 4], 0.95)!;
  // mean 2.5, standard deviation √(5/3), one more value of five: textbook prediction interval
  expect(high - low).toBeCloseTo(2 * studentQuantile(0.975, 3) * Math.sqrt((5 / 3) * 1.25), 12);
  expect((low + high) / 2).toBeCloseTo(2.5, 12);
  expect(findTreeBlindInterval([1], 0.95)).toBeUndefined();
});

const grounds = {
  measuredSpecimens: 0,
  limitingSpecimens: 0,
  hasTree: true,
  inTree: true,
  measuredTaxa: 5,
  interval: [1, 4],
  treeBlind: [0, 4],
} as const;

test.each([
  [{ measuredSpecimens: 1, limitingSpecimens: 2 }, 'measured', undefined],
  [{ measuredSpecimens: 1, hasTree: false, inTree: false }, 'measured', undefined],
  [{ limitingSpecimens: 1, measuredTaxa: 0 }, 'bounded', undefined],
  [{}, 'inferred', undefined],
  [{ hasTree: false }, 'unknown', 'no-tree'],
  [{ inTree: false }, 'unknown', 'not-in-tree'],
  [{ measuredTaxa: 3 }, 'unknown', 'fewer-than-four'],
  [{ interval: undefined }, 'unknown', 'not-estimated'],
  [{ interval: [0, 4] as const }, 'unknown', 'no-narrower-than-without-tree'],
  [{ interval: [-1, 5] as const }, 'unknown', 'no-narrower-than-without-tree'],
])('a value with grounds %j is %s (%s)', (change, status, reason) => {
  expect(statusOf({ ...grounds, ...change })).toEqual(reason ? { status, reason } : { status });
});
