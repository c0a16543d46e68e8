import { resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { applyWarp, fitWarp, type DrawingTemplate } from '../../../analysis/geometry/index.ts';
import { branchesAt } from '../../../components/figures/scene/branch-list.ts';
import { plateData } from '../../../components/figures/scene/plate-data.ts';
import { templateShape } from '../../../analysis/geometry/index.ts';
import { lineageView, type LineageView } from '../../../components/lineage/view.ts';
import { findSliceBlock } from '../../../components/slice/compose-block.ts';
import { everyPoint } from '../../../components/slice/line-points.ts';
import { shapeOfNode } from '../../../components/slice/node-outlines.ts';
import { cutBranches, findShape, numbersBetween } from '../../../components/slice/slice-at.ts';
import type { MovingLine, SliceBlock } from '../../../components/slice/slice-block.ts';
import { templateOutline } from '../../../components/slice/template-outline.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

let view: LineageView;
let block: SliceBlock;
beforeAll(async () => {
  const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../../content/reed-trunks'));
  view = lineageView(compiled!, 'en');
  block = findSliceBlock(view)!;
});

/** How far each point of a line lies from the same line drawn roughly, in tenths of a unit. */
function gapsOf(outline: readonly number[], { first, last, rough }: MovingLine): number[] {
  const at = (index: number): readonly [number, number] => [outline[2 * index]!, outline[2 * index + 1]!];
  return everyPoint({ first, last }).map((index) => {
    const after = Math.max(
      1,
      rough.findIndex((each) => each >= index),
    );
    const [[x, y], [ax, ay], [bx, by]] = [at(index), at(rough[after - 1]!), at(rough[after]!)];
    const [dx, dy] = [bx - ax, by - ay];
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1);
    const share = Math.min(1, Math.max(0, along));
    return Math.hypot(x - ax - dx * share, y - ay - dy * share);
  });
}

describe('the block of a slice', () => {
  test('counts as the story and the plate do', () => {
    const { branches } = plateData(view.lineage, view.trait, 'en');
    for (let age = 0; age < 55; age += 0.5)
      expect(
        cutBranches(block, age)
          .map(({ branch }) => branch.id)
          .sort(),
      ).toEqual(
        branchesAt(branches, age)
          .map(({ id }) => id)
          .sort(),
      );
  });

  test('calls no branch by an animal alone, and none an ancestor', () => {
    const said = block.branches.map(({ name }) => name.map(({ text }) => text).join(''));
    expect(new Set(said).size).toBe(said.length);
    for (const name of said) expect(name).toMatch(/^(branch of|on the way to) [A-Z]/);
    expect(said).toContain('branch of Calathorhina mira');
    expect(said).toContain('on the way to Calamorhina prisca and Calamorhina vivax');
  });

  test('has an outline at every node, the reading of each at its value', () => {
    expect(block.outlines.every((outline) => outline !== null)).toBe(true);
    expect(new Set(block.outlines.map((outline) => outline!.length)).size).toBe(1);
    for (const { node, median } of view.trait.nodes) {
      const index = view.lineage.shapes!.nodes.findIndex((each) => each.node === node);
      expect(block.values[index]).toBeCloseTo(median, 9);
    }
  });

  test('has straight curves between nodes within a unit of a warp of their own, less than a pixel of a small picture', () => {
    const shapes = view.lineage.shapes!;
    const template = view.lineage.templates!.find(({ id }) => id === shapes.template) as DrawingTemplate;
    const { points } = templateOutline(template, view.trait.accent);
    let farthest = 0;
    for (const cut of [...cutBranches(block, 14), ...cutBranches(block, 33), ...cutBranches(block, 45)]) {
      const [from, to] = cut.branch.ends.map((node) => shapes.nodes[node]!.at) as [number[], number[]];
      const shape = shapeOfNode(shapes, numbersBetween(from, to, cut.share));
      const warp = fitWarp(templateShape(template), shape);
      const { from: start, to: end, share } = findShape(block, cut)!;
      const outline = numbersBetween(start, end, share);
      points.forEach((point, index) => {
        const [x, y] = applyWarp(warp, point);
        farthest = Math.max(
          farthest,
          Math.hypot(outline[2 * index]! / 10 - x, outline[2 * index + 1]! / 10 - y),
        );
      });
    }
    expect(farthest).toBeLessThan(0.85);
  });

  test('has rough lines for a moving shape: under two thirds of the points, within 2.5 units at every node', () => {
    const count = (of: (line: MovingLine) => number) => block.lines.reduce((sum, line) => sum + of(line), 0);
    const exact = count(({ first, last }) => last - first + 1);
    expect(count(({ rough }) => rough.length)).toBeLessThan((exact * 2) / 3);
    for (const { rough, first, last } of block.lines) expect([rough[0], rough.at(-1)]).toEqual([first, last]);
    const gaps = block.outlines.flatMap((outline) => block.lines.flatMap((line) => gapsOf(outline!, line)));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(25);
  });

  test('is small enough to fetch, and speaks the language of its page', () => {
    expect(JSON.stringify(block).length).toBeLessThan(200_000);
    const spanish = findSliceBlock(lineageView(view.lineage, 'es'))!;
    expect(spanish.words['slice.inferred']).toBe('forma deducida de los parientes');
    expect(spanish.outlines).toBe(block.outlines);
  });

  test('is not made without shapes along a tree', () => {
    const { shapes: _, ...without } = view.lineage;
    expect(findSliceBlock(lineageView(without, 'en'))).toBeUndefined();
  });
});
