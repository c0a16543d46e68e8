import type { DatedTree } from '../tree/index.ts';
import type { PlanePoint, Shape } from './plane.ts';
import type { ShapeTrend } from './shape-trend.ts';
import { shapesOfTips } from './shapes-on-tree.ts';

/** Value and both coordinates of one landmark, carried up the tree. */
interface Carried {
  readonly value: number;
  readonly at: PlanePoint;
  /** Branch above, lengthened by what averaging left open. */
  readonly lengthMa: number;
}

/** Sums over contrasts: of the value with itself, and of each coordinate with the value. */
interface Sums {
  square: number;
  withX: number;
  withY: number;
}

/**
 * Slope of every coordinate on the x of one landmark, corrected for descent: the regression through the origin of
 * independent contrasts (Felsenstein 1985, The American Naturalist 125: 1–15), which is generalised least squares under
 * Brownian motion. Each landmark over the tips that have it and the reading; one that fewer than three tips show, or whose
 * tips do not differ in the reading, is left out. Linear in nodes for each landmark.
 */
export function shapeTrendOnTree(
  tree: DatedTree,
  shapes: ReadonlyMap<string, Shape>,
  reading: string,
): ShapeTrend {
  const tips = [...shapesOfTips(tree, shapes)].filter(([, shape]) => shape.has(reading));
  const landmarks = new Set(tips.flatMap(([, shape]) => [...shape.keys()]));
  return new Map(
    [...landmarks].flatMap((id): [string, PlanePoint][] => {
      const shown = tips.filter(([, shape]) => shape.has(id));
      if (shown.length < 3) return [];
      const values = new Map(
        shown.map(([tip, shape]) => [tip, { value: shape.get(reading)![0], at: shape.get(id)! }]),
      );
      const { square, withX, withY } = sumContrasts(tree, values);
      return square > 0 ? [[id, [withX / square, withY / square]]] : [];
    }),
  );
}

function sumContrasts(
  tree: DatedTree,
  tips: ReadonlyMap<number, { readonly value: number; readonly at: PlanePoint }>,
): Sums {
  const sums: Sums = { square: 0, withX: 0, withY: 0 };
  const waiting = new Map<number, Carried>();
  for (let node = 0; node < tree.parent.length; node++) {
    const tip = tips.get(node);
    const here: Carried | undefined = tip ? { ...tip, lengthMa: 0 } : waiting.get(node);
    const above = tree.parent[node]!;
    if (!here || above === -1) continue;
    const risen = { ...here, lengthMa: here.lengthMa + tree.branchLength[node]! };
    const sister = waiting.get(above);
    waiting.set(above, sister ? joined(sister, risen, sums) : risen);
  }
  return sums;
}

/** The contrast of two sisters goes into the sums; their weighted mean goes on. No time between them leaves no contrast. */
function joined(one: Carried, other: Carried, sums: Sums): Carried {
  const spanMa = one.lengthMa + other.lengthMa;
  if (!(spanMa > 0)) return one;
  const value = one.value - other.value;
  sums.square += (value * value) / spanMa;
  sums.withX += (value * (one.at[0] - other.at[0])) / spanMa;
  sums.withY += (value * (one.at[1] - other.at[1])) / spanMa;
  const share = other.lengthMa / spanMa;
  const between = (first: number, second: number) => share * first + (1 - share) * second;
  return {
    value: between(one.value, other.value),
    at: [between(one.at[0], other.at[0]), between(one.at[1], other.at[1])],
    lengthMa: (one.lengthMa * other.lengthMa) / spanMa,
  };
}
