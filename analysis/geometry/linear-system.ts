/** A square matrix taken apart once, to solve for several right-hand sides. */
export interface Factors {
  readonly size: number;
  readonly lowerUpper: Float64Array;
  readonly order: Int32Array;
}

/**
 * Triangular factors of a square matrix given row by row, by Gaussian elimination with partial pivoting (Golub and
 * Van Loan, Matrix Computations, section 3.4). Cost grows with the cube of the size. Undefined where a pivot is
 * zero; whether the system is well posed is for the caller to know.
 */
export function findFactors(matrix: Float64Array, size: number): Factors | undefined {
  const lowerUpper = Float64Array.from(matrix);
  const order = Int32Array.from({ length: size }, (_, row) => row);
  for (let column = 0; column < size; column++) {
    const pivot = pivotRow(lowerUpper, size, column);
    if (!(Math.abs(lowerUpper[pivot * size + column]!) > 0)) return undefined;
    swapRows(lowerUpper, order, size, pivot, column);
    eliminateBelow(lowerUpper, size, column);
  }
  return { size, lowerUpper, order };
}

function pivotRow(matrix: Float64Array, size: number, column: number): number {
  let best = column;
  for (let row = column + 1; row < size; row++)
    if (Math.abs(matrix[row * size + column]!) > Math.abs(matrix[best * size + column]!)) best = row;
  return best;
}

function swapRows(matrix: Float64Array, order: Int32Array, size: number, one: number, other: number): void {
  if (one === other) return;
  for (let column = 0; column < size; column++) {
    const kept = matrix[one * size + column]!;
    matrix[one * size + column] = matrix[other * size + column]!;
    matrix[other * size + column] = kept;
  }
  const kept = order[one]!;
  order[one] = order[other]!;
  order[other] = kept;
}

function eliminateBelow(matrix: Float64Array, size: number, pivot: number): void {
  for (let row = pivot + 1; row < size; row++) {
    const factor = matrix[row * size + pivot]! / matrix[pivot * size + pivot]!;
    matrix[row * size + pivot] = factor;
    if (factor === 0) continue;
    for (let column = pivot + 1; column < size; column++)
      matrix[row * size + column] = matrix[row * size + column]! - factor * matrix[pivot * size + column]!;
  }
}

/** Solution of a factored system for one right-hand side. */
export function solveFactored({ size, lowerUpper, order }: Factors, right: ArrayLike<number>): Float64Array {
  const solution = Float64Array.from(order, (row) => right[row]!);
  for (let row = 1; row < size; row++)
    for (let column = 0; column < row; column++)
      solution[row] = solution[row]! - lowerUpper[row * size + column]! * solution[column]!;
  for (let row = size - 1; row >= 0; row--) {
    for (let column = row + 1; column < size; column++)
      solution[row] = solution[row]! - lowerUpper[row * size + column]! * solution[column]!;
    solution[row] = solution[row]! / lowerUpper[row * size + row]!;
  }
  return solution;
}
