import { Matrix, inverse } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import {
  shapesAlong,
  shapesAtNodes,
  shapeTrendOnTree,
  type PlanePoint,
  type Shape,
} from '../../../analysis/geometry/index.ts';
import { seededRandom } from '../../../analysis/random/index.ts';
import { rootOf, tipsOf, type DatedTree } from '../../../analysis/tree/index.ts';
import { denseBrownian, sharedPaths } from '../../reference/dense-brownian.ts';
import { randomTree } from '../../reference/random-tree.ts';

const trees = Array.from({ length: 12 }, (_, seed) => {
  const random = seededRandom('shapes', seed);
  const tree = randomTree(6 + seed, random, { polytomies: seed % 2 === 0 });
  return { tree, shapes: scatteredShapes(tree, random) };
});

/** Three landmarks a tip, anywhere; every third tip lacks one of them. */
function scatteredShapes(tree: DatedTree, random: () => number): Map<string, Shape> {
  return new Map(
    tipsOf(tree).map((tip, index) => {
      const place = (): PlanePoint => [100 * random(), 60 * random()];
      const shape = new Map([
        ['reading', place()],
        ['roof', place()],
        ['rear', place()],
      ]);
      if (index % 3 === 2) shape.delete('roof');
      return [tree.label[tip]!, shape];
    }),
  );
}

const observed = (shapes: ReadonlyMap<string, Shape>, landmark: string, axis: 0 | 1) =>
  [...shapes].flatMap(([taxon, shape]) => {
    const at = shape.get(landmark);
    return at ? [{ taxon, mean: at[axis], variance: 0 }] : [];
  });

describe('shapes on a tree', () => {
  test('are at forks and tips what dense algebra gives for each coordinate (Garland and Ives 2000)', () => {
    for (const { tree, shapes } of trees) {
      const nodes = Array.from(tree.parent, (_, node) => node);
      const found = shapesAtNodes(tree, shapes);
      for (const landmark of ['reading', 'roof', 'rear'])
        for (const axis of [0, 1] as const) {
          const observations = observed(shapes, landmark, axis);
          if (observations.length < 4) continue;
          const { targets } = denseBrownian(tree, observations, 1, nodes);
          targets.forEach(({ mean }, node) => expect(found[node]!.get(landmark)![axis]).toBeCloseTo(mean, 8));
        }
    }
  });

  test('run straight in time between the two ends of a branch', () => {
    for (const { tree, shapes } of trees) {
      const ends = shapesAtNodes(tree, shapes);
      for (let node = 0; node < rootOf(tree); node++) {
        const share = 0.37;
        const above = tree.parent[node]!;
        const ageMa = tree.ageMa[node]! + share * tree.branchLength[node]!;
        const [between] = shapesAlong(tree, shapes, [{ node, ageMa }]);
        for (const [id, at] of between!)
          at.forEach((coordinate, axis) => {
            const [low, high] = [ends[node]!.get(id)![axis]!, ends[above]!.get(id)![axis]!];
            expect(Math.abs(coordinate - (low + share * (high - low)))).toBeLessThan(1e-9);
          });
      }
    }
  });

  test('leave out a landmark of fewer than four tips, and keep one that never moves', () => {
    const { tree } = trees[3]!;
    const tips = tipsOf(tree).map((tip) => tree.label[tip]!);
    const shapes = new Map(
      tips.map((taxon, index): [string, Shape] => [
        taxon,
        new Map<string, PlanePoint>([
          ['still', [100, 0]],
          ...(index < 3 ? [['rare', [index, 1]] as const] : []),
        ]),
      ]),
    );
    for (const shape of shapesAtNodes(tree, shapes)) expect([...shape]).toEqual([['still', [100, 0]]]);
  });
});

describe('a trend of shapes on a tree', () => {
  test('is the slope of generalised least squares by dense algebra (Grafen 1989)', () => {
    for (const { tree, shapes } of trees) {
      const found = shapeTrendOnTree(tree, shapes, 'reading');
      for (const landmark of ['roof', 'rear'])
        for (const axis of [0, 1] as const) {
          const y = observed(shapes, landmark, axis);
          const wanted = denseSlope(
            tree,
            y.map(({ taxon }) => taxon),
            {
              x: y.map(({ taxon }) => shapes.get(taxon)!.get('reading')![0]),
              y: y.map(({ mean }) => mean),
            },
          );
          expect(found.get(landmark)![axis]).toBeCloseTo(wanted, 8);
        }
    }
  });

  test('moves the reading by one, itself', () => {
    for (const { tree, shapes } of trees)
      expect(shapeTrendOnTree(tree, shapes, 'reading').get('reading')![0]).toBeCloseTo(1, 12);
  });

  test('says nothing of landmarks in fewer than three shapes, or where the reading never differs', () => {
    const { tree, shapes } = trees[0]!;
    const few = new Map([...shapes].slice(0, 2));
    expect(shapeTrendOnTree(tree, few, 'reading').size).toBe(0);
    const same = new Map([...shapes].map(([id]): [string, Shape] => [id, new Map([['reading', [5, 5]]])]));
    expect(shapeTrendOnTree(tree, same, 'reading').size).toBe(0);
  });
});

function denseSlope(
  tree: DatedTree,
  taxa: readonly string[],
  { x, y }: { x: readonly number[]; y: readonly number[] },
): number {
  const tip = new Map(tipsOf(tree).map((node) => [tree.label[node]!, node]));
  const precision = inverse(
    new Matrix(
      sharedPaths(
        tree,
        taxa.map((taxon) => tip.get(taxon)!),
      ),
    ),
  );
  const design = new Matrix(x.map((value) => [1, value]));
  const left = design.transpose().mmul(precision);
  return inverse(left.mmul(design))
    .mmul(left.mmul(Matrix.columnVector([...y])))
    .get(1, 0);
}
