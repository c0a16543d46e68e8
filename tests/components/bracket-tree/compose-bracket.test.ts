import { describe, expect, test } from 'vitest';
import { bracketData } from '../../../components/figures/bracket-tree/bracket-data.ts';
import { bracketLayouts } from '../../../components/figures/bracket-tree/bracket-layout.ts';
import {
  composeBracket,
  type BracketScene,
} from '../../../components/figures/bracket-tree/compose-bracket.ts';
import { tipsOf } from '../../../components/figures/bracket-tree/kin.ts';
import { timeScale } from '../../../components/figures/bracket-tree/time-scale.ts';
import { lineageView } from '../../../components/lineage/view.ts';
import { overlap, type Box } from '../../../components/figures/scene/label-slots.ts';
import { textWidth, type Mark } from '../../../components/figures/scene/scene.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';
import { risingTips } from '../fixtures/hands.ts';
import { bracketOf, manyKin, manyTips } from './trees.ts';

const words = { unit: 'million years ago', older: 'older', today: 'today' };
const [wide] = bracketLayouts;
const cases = bracketLayouts.flatMap((layout) => [1, 2, 24, 40, 200].map((count) => ({ layout, count })));

function labelBoxes(scene: BracketScene): Box[] {
  return scene.marks.flatMap(({ role, shape }) => {
    if (role !== 'tip-label' || shape.kind !== 'text') return [];
    // Near enough here; the browser test measures the letters themselves.
    const width = shape.runs.reduce(
      (sum, run) => sum + textWidth(run.text, shape.size) * (run.voice === 'name' ? 0.8 : 1),
      0,
    );
    return {
      left: shape.x,
      right: shape.x + width,
      top: shape.y - shape.size * 0.7,
      bottom: shape.y + shape.size * 0.22,
    };
  });
}

const pathOf = ({ shape }: Mark) => (shape.kind === 'path' ? shape.d : '');
const numbers = (d: string) => [...d.matchAll(/[-\d.]+/g)].map((match) => Number(match[0]));

describe.each(cases)('a bracket tree of $count on the $layout.name layout', ({ layout, count }) => {
  const data = manyKin(count);
  const scene = composeBracket(data, layout, words);

  test('has only lines along time or across it', () => {
    const lines = scene.marks.filter(({ role }) => role.startsWith('kin-line')).map(pathOf);
    expect(lines).toHaveLength(2 * (count - 1) + count);
    for (const d of lines) expect(d).toMatch(/^M[-\d.]+ [-\d.]+[HV][-\d.]+$/);
  });

  test('ends each line in a named animal, and names no fork', () => {
    const named = scene.marks.filter(({ role }) => role === 'tip-label').map(({ datum }) => datum);
    expect(named).toEqual(tipsOf(data.kin.root));
    expect(new Set(named).size).toBe(count);
  });

  test('keeps all names apart and inside', () => {
    const boxes = labelBoxes(scene);
    boxes.forEach((box, index) => {
      expect(box.right).toBeLessThanOrEqual(scene.width);
      for (const other of boxes.slice(index + 1)) expect(overlap(box, other)).toBe(false);
    });
  });

  test('stays within its own size', () => {
    for (const mark of scene.marks)
      for (const value of numbers(pathOf(mark)))
        expect(value >= -1 && value <= Math.max(scene.width, scene.height)).toBe(true);
  });
});

describe('a bracket tree', () => {
  const data = bracketOf(inventedLineage(risingTips), 'trunk');
  const scene = composeBracket(data, wide!, words);
  const scale = timeScale(data, wide!);
  const marksOf = (taxon: string) => scene.marks.filter((mark) => mark.datum === taxon);

  test('has time running to the right, to today', () => {
    expect(scale.x(0)).toBe(scale.right);
    expect(scale.x(50)).toBeLessThan(scale.x(10));
  });

  test('states its axis: ages, units, and which end is today', () => {
    const said = scene.axis.marks.flatMap(({ layer, shape }) =>
      layer === 'bracket-axis' && shape.kind === 'text' ? [{ text: shape.runs[0]!.text, x: shape.x }] : [],
    );
    const at = (text: string) => said.find((each) => each.text === text)!.x;
    expect(at('older')).toBeLessThan(at('million years ago'));
    expect(at('million years ago')).toBeLessThan(at('today'));
    expect(at('50')).toBeCloseTo(scale.x(50), 9);
    expect(at('0')).toBeCloseTo(scale.x(0), 9);
  });

  test('has every living animal at one place, today', () => {
    for (const id of ['cousin', 'trunk']) {
      const disc = marksOf(id).find(({ role }) => role === 'disc')!.shape;
      expect(disc.kind === 'circle' && disc.x).toBeCloseTo(scale.right, 9);
    }
  });

  test('marks each status by its own shape, as the plate does', () => {
    const roles = (id: string) => marksOf(id).map(({ role }) => role);
    expect(roles('first')).toContain('disc');
    expect(roles('broken')).toEqual(expect.arrayContaining(['half', 'wall']));
    expect(roles('faceless')).toContain('diamond');
    expect(roles('faceless')).not.toContain('disc');
  });

  test('draws the finds of an animal at their ages', () => {
    const bar = marksOf('side').find(({ role }) => role === 'find-bar')!.shape;
    if (bar.kind !== 'rect') throw new Error('a bar is a rectangle');
    expect(bar.x).toBeCloseTo(scale.x(36), 9);
    expect(bar.x + bar.width).toBeCloseTo(scale.x(28), 9);
  });

  test('does not end its order with the focal animal', () => {
    const order = tipsOf(data.kin.root);
    expect([order[0], order.at(-1)]).not.toContain('trunk');
  });

  test('never prints an inferred value without its brackets', () => {
    const label = marksOf('faceless').find(({ role }) => role === 'tip-label')!.shape;
    expect(label.kind === 'text' && label.runs[1]!.text).toMatch(/42 \[28–56\]/);
  });

  test('shortens a name of eighty letters and keeps it inside', () => {
    const long = { ...manyTips(3)[0]!, name: `Longa ${'x'.repeat(74)}` };
    const lineage = inventedLineage([long, ...manyTips(3).slice(1)]);
    for (const layout of bracketLayouts) {
      const label = composeBracket(bracketOf(lineage), layout, words).marks.find(
        ({ role }) => role === 'tip-label',
      );
      expect(label?.shape.kind === 'text' && label.shape.runs[0]!.text).toMatch(/^L\. x+…$/);
    }
  });

  test('ticks the line on which a character changes, with its number, and moves both with the line', () => {
    const [fork] = data.kin.root.children.filter(({ children }) => children.length > 0);
    const changes = new Map([
      [fork!.id, [1, 2]],
      ['side', [3]],
    ]);
    const ticked = composeBracket({ ...data, changes }, wide!, words).marks;
    for (const [id, own] of changes) {
      const marks = ticked.filter(({ datum }) => datum === id);
      const line = numbers(pathOf(marks.find(({ role }) => role === 'kin-line')!));
      const ticks = marks
        .filter(({ role }) => role === 'change-tick')
        .map((mark) => numbers(pathOf(mark))[0]!);
      expect(ticks).toHaveLength(own.length);
      for (const x of ticks) expect(x > line[0]! && x < line[2]!).toBe(true);
      const said = marks.flatMap(({ role, shape }) =>
        role === 'change-number' && shape.kind === 'text' ? [Number(shape.runs[0]!.text)] : [],
      );
      expect(said).toEqual(own);
    }
    expect(ticked.filter(({ role }) => role === 'change-tick')).toHaveLength(3);
  });

  test('is absent for a lineage without a tree', () => {
    const lineage = { ...inventedLineage(risingTips), trees: [] };
    expect(bracketData(lineageView(lineage, 'en'), '')).toBeUndefined();
  });
});
