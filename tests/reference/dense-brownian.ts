import { Matrix, inverse, CholeskyDecomposition } from 'ml-matrix';
import { tipsOf, type DatedTree } from '../../analysis/tree/index.ts';

/*
 * Brownian motion by dense algebra (general-purpose library ml-matrix): the formulas of generalised least squares
 * written out, cubic in taxa, as a check on the linear passes. Garland and Ives 2000, American Naturalist 155: 346–364.
 */

/** Path that two nodes share from the root down, for every pair of the nodes given. */
export function sharedPaths(tree: DatedTree, nodes: readonly number[]): number[][] {
  const rootAge = tree.ageMa[tree.parent.length - 1]!;
  const lineage = nodes.map((node) => {
    const seen = new Set<number>();
    for (let at = node; at !== -1; at = tree.parent[at]!) seen.add(at);
    return seen;
  });
  return nodes.map((_, i) =>
    nodes.map((other) => {
      let at = other;
      while (!lineage[i]!.has(at)) at = tree.parent[at]!;
      return rootAge - tree.ageMa[at]!;
    }),
  );
}

/** Tips of a tree by label. */
export function tipNodes(tree: DatedTree): Map<string, number> {
  return new Map(tipsOf(tree).map((tip) => [tree.label[tip]!, tip]));
}

/** Restricted log-likelihood, mean, variance and weights of each target at one rate, by dense algebra. */
export function denseBrownian(
  tree: DatedTree,
  observations: readonly { taxon: string; mean: number; variance: number }[],
  rate: number,
  targets: readonly number[],
) {
  const tips = tipNodes(tree);
  const observed = observations.map(({ taxon }) => tips.get(taxon)!);
  const n = observed.length;
  const shared = sharedPaths(tree, [...observed, ...targets]);
  const covariance = new Matrix(
    observed.map((_, i) =>
      observed.map((_, j) => rate * shared[i]![j]! + (i === j ? observations[i]!.variance : 0)),
    ),
  );
  const precision = inverse(covariance);
  const ones = Matrix.ones(n, 1);
  const values = Matrix.columnVector(observations.map(({ mean }) => mean));
  const information = ones.transpose().mmul(precision).mmul(ones).get(0, 0);
  const rootMean = ones.transpose().mmul(precision).mmul(values).get(0, 0) / information;
  const residual = Matrix.sub(values, Matrix.mul(ones, rootMean));
  const quadratic = residual.transpose().mmul(precision).mmul(residual).get(0, 0);
  const factor = new CholeskyDecomposition(covariance).lowerTriangularMatrix;
  const logDeterminant = 2 * factor.diagonal().reduce((sum, entry) => sum + Math.log(entry), 0);
  const restricted =
    -0.5 * ((n - 1) * Math.log(2 * Math.PI) + logDeterminant + Math.log(information) + quadratic);
  const projection = Matrix.sub(
    precision,
    precision.mmul(ones).mmul(ones.transpose()).mmul(precision).div(information),
  );
  const paths = new Matrix(observed.map((_, i) => observed.map((_, j) => rate * shared[i]![j]!)));
  const spread = projection.mmul(paths);
  const at = targets.map((_, t) => {
    const towards = Matrix.columnVector(observed.map((_, i) => rate * shared[n + t]![i]!));
    const gain = precision.mmul(towards);
    const rest = 1 - gain.sum();
    const weights = Matrix.add(gain, precision.mmul(ones).mul(rest / information)).to1DArray();
    const variance =
      rate * shared[n + t]![n + t]! - towards.transpose().mmul(gain).get(0, 0) + (rest * rest) / information;
    return {
      mean: weights.reduce((sum, weight, i) => sum + weight * observations[i]!.mean, 0),
      variance,
      weights,
    };
  });
  return { restricted, rootMean, information: spread.mmul(spread).trace(), targets: at };
}
