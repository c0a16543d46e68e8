/** Rows of a small square matrix. Plain arrays: for a few numbers they are quicker to make than typed ones. */
export type SmallMatrix = readonly (readonly number[])[];

/**
 * Inverse of a small symmetric positive definite matrix by Gauss and Jordan's elimination, cubic in its size. Throws
 * where it is singular.
 */
export function invertSmall(matrix: SmallMatrix): SmallMatrix {
  const size = matrix.length;
  const work = matrix.map((row, i) => [...row, ...row.map((_, j) => Number(i === j))]);
  for (let pivot = 0; pivot < size; pivot++) {
    const lead = work[pivot]![pivot]!;
    if (!(lead > 0)) throw new Error('the covariance of the limits is singular');
    for (let k = 0; k < 2 * size; k++) work[pivot]![k]! /= lead;
    for (let row = 0; row < size; row++) {
      const share = work[row]![pivot]!;
      if (row === pivot || share === 0) continue;
      for (let k = 0; k < 2 * size; k++) work[row]![k]! -= share * work[pivot]![k]!;
    }
  }
  return work.map((row) => row.slice(size));
}
