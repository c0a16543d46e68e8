import { findPointEstimates, type BranchPoint } from '../estimate/index.ts';
import { tipsOf, type DatedTree } from '../tree/index.ts';
import type { PlanePoint, Shape } from './plane.ts';

/**
 * The shape at each given point of a dated tree: every coordinate of every landmark is estimated like a trait, by Brownian
 * motion from the shapes of tips, which are exact. All shapes must lie in one frame. A landmark that fewer than four tips
 * have is in none; one that all have in the same place is there everywhere. Throws for a point off its branch.
 */
export function shapesAlong(
  tree: DatedTree,
  shapes: ReadonlyMap<string, Shape>,
  points: readonly BranchPoint[],
): Map<string, PlanePoint>[] {
  const along = points.map(() => new Map<string, PlanePoint>());
  const landmarks = [...new Set([...shapes.values()].flatMap((shape) => [...shape.keys()]))].sort();
  for (const landmark of landmarks) {
    const shown = [...shapes].flatMap(([taxon, shape]) => {
      const at = shape.get(landmark);
      return at ? [{ taxon, at }] : [];
    });
    if (shown.length < 4) continue;
    const [x, y] = ([0, 1] as const).map((axis) =>
      coordinateAlong(
        tree,
        shown.map(({ taxon, at }) => ({ taxon, mean: at[axis], variance: 0 })),
        points,
      ),
    ) as [number[], number[]]; // two axes in, two lists out
    along.forEach((shape, index) => shape.set(landmark, [x[index]!, y[index]!]));
  }
  return along;
}

/** The shape at every node of a dated tree, forks and tips, in the order of its nodes; see `shapesAlong`. */
export function shapesAtNodes(
  tree: DatedTree,
  shapes: ReadonlyMap<string, Shape>,
): Map<string, PlanePoint>[] {
  return shapesAlong(
    tree,
    shapes,
    Array.from(tree.ageMa, (ageMa, node) => ({ node, ageMa })),
  );
}

function coordinateAlong(
  tree: DatedTree,
  observations: readonly { taxon: string; mean: number; variance: number }[],
  points: readonly BranchPoint[],
): number[] {
  const estimates = findPointEstimates({ tree, observations }, points);
  // All tips agree to the last digit: so does every point between them.
  return points.map((_, index) => estimates?.[index]!.median ?? observations[0]!.mean);
}

/** Shapes of those tips that have one. */
export function shapesOfTips(tree: DatedTree, shapes: ReadonlyMap<string, Shape>): Map<number, Shape> {
  return new Map(
    tipsOf(tree).flatMap((tip): [number, Shape][] => {
      const shape = shapes.get(tree.label[tip]!);
      return shape ? [[tip, shape]] : [];
    }),
  );
}
