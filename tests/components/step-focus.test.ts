import { describe, expect, test } from 'vitest';
import { branchesBetween, intervalMarks } from '../../components/figures/scene/interval.ts';
import { wide } from '../../components/figures/scene/layout.ts';
import { plateData } from '../../components/figures/scene/plate-data.ts';
import { ribbonMarks } from '../../components/figures/scene/ribbons.ts';
import { plateScales } from '../../components/figures/scene/scales.ts';
import { findBranch, focusTaxa, ribbonId } from '../../components/lineage/focus.ts';
import { splitAtNames } from '../../components/lineage/split-at-names.ts';
import { storyPlan } from '../../components/lineage/story-plan.ts';
import { risingTips } from './fixtures/hands.ts';
import { inventedLineage } from './fixtures/invented-lineage.ts';

const lineage = inventedLineage(risingTips);
const [trait] = lineage.traits;
const [tree] = lineage.trees;
const data = plateData(lineage, trait!, 'en');
const scales = plateScales(data, wide);

describe('the focus of a step', () => {
  test('of a clade is every animal that descends from the fork which its members share', () => {
    expect(focusTaxa('clade:old-trunk+trunk', tree)).toEqual(expect.arrayContaining(['old-trunk', 'trunk']));
    expect(focusTaxa('clade:first+trunk', tree).length).toBeGreaterThan(8);
    expect(focusTaxa('clade:first+trunk', tree)).not.toContain('cousin');
  });

  test('of a branch is its animals first, so that one of them is drawn, then the line and its ribbon', () => {
    const node = findBranch('branch:old-trunk+trunk', tree!)!;
    expect(node.taxon).toBeUndefined();
    expect(focusTaxa('branch:old-trunk+trunk', tree)).toEqual([
      'old-trunk',
      'trunk',
      node.id,
      ribbonId(node.id),
    ]);
  });

  test('of the branch of one animal is its own twig', () => {
    expect(findBranch('branch:trunk', tree!)?.taxon).toBe('trunk');
  });

  test('of the root has no branch to show', () => {
    expect(findBranch('branch:cousin+trunk', tree!)).toBeUndefined();
  });
});

test('a story plan has the slices, intervals, branches and table of its steps', () => {
  const plan = storyPlan(
    '<Step focus="branch:old-trunk+trunk" show="figure"></Step><Step from="40" to="35"></Step>' +
      '<Step age="32" show="slice"></Step><Step show="table"></Step>',
    trait!,
  );
  expect(plan).toMatchObject({
    steps: 4,
    first: 'old-trunk',
    slices: [32],
    intervals: [[40, 35]],
    branches: ['branch:old-trunk+trunk'],
    hasTable: true,
  });
});

describe('an interval', () => {
  test('holds every branch that lived at some time in it, and no other', () => {
    const ids = branchesBetween(data.branches, 40, 35).map(({ id }) => id);
    for (const { id, from, lastMa } of data.branches)
      expect(ids.includes(id), id).toBe(from.ageMa > 35 && lastMa <= 40);
  });

  test('is drawn from its younger age down to its older one', () => {
    const band = intervalMarks([40, 35], wide, scales, 'words').find(({ role }) => role === 'interval-band')!;
    const shape = band.shape.kind === 'rect' ? band.shape : undefined;
    expect(shape!.y).toBeCloseTo(scales.y(35), 9);
    expect(shape!.y + shape!.height).toBeCloseTo(scales.y(40), 9);
  });
});

test('a ribbon closes round its low ends upward and its high ends back', () => {
  const points = [
    { ageMa: 30, low: 20, high: 40 },
    { ageMa: 25, low: 18, high: 45 },
  ];
  const [mark] = ribbonMarks([{ id: 'ribbon-x', points }], scales);
  const d = mark!.shape.kind === 'path' ? mark!.shape.d : '';
  const xs = [...d.matchAll(/[ML]([\d.]+) /g)].map(([, x]) => Number(x));
  expect(xs).toHaveLength(4);
  expect(xs[0]).toBeCloseTo(scales.x(20), 0);
  expect(xs[2]).toBeCloseTo(scales.x(45), 0);
  expect(d.endsWith('Z')).toBe(true);
});

test('names in a sentence are found, the longer of two that begin alike', () => {
  expect(splitAtNames('Aqua (x) is no Aqua.', ['Aqua', 'Aqua (x)'])).toEqual([
    { text: 'Aqua (x)', isName: true },
    { text: ' is no ', isName: false },
    { text: 'Aqua', isName: true },
    { text: '.', isName: false },
  ]);
});
