/**
 * A symmetric positive definite matrix with a narrow band, for the few unknowns of a beam: row `i` holds
 * its entries from the diagonal `i` to `i + BAND` (the upper half).
 */
export type Banded = readonly Float64Array[];

/** Two unknowns a node, four an element: three places beside the diagonal. */
const BAND = 3;

export function bandedZeros(size: number): Banded {
  return Array.from({ length: size }, () => new Float64Array(BAND + 1));
}

/** Adds a symmetric block of four unknowns that begins at unknown `first`. */
export function addBlock(
  matrix: Banded,
  first: number,
  block: (row: number, column: number) => number,
): void {
  for (let row = 0; row <= BAND; row += 1) {
    const entries = matrix[first + row] as Float64Array;
    for (let column = row; column <= BAND; column += 1) {
      entries[column - row] = (entries[column - row] as number) + block(row, column);
    }
  }
}

export function times(matrix: Banded, vector: Float64Array): Float64Array {
  const product = new Float64Array(vector.length);
  matrix.forEach((entries, row) => {
    product[row] = (product[row] as number) + (entries[0] as number) * (vector[row] as number);
    for (let beside = 1; beside <= BAND && row + beside < vector.length; beside += 1) {
      const entry = entries[beside] as number;
      product[row] = (product[row] as number) + entry * (vector[row + beside] as number);
      product[row + beside] = (product[row + beside] as number) + entry * (vector[row] as number);
    }
  });
  return product;
}

/** Factors the matrix in place into U'DU: the diagonal of D, and above it the unit upper triangle. */
export function factor(matrix: Banded): void {
  for (let row = 0; row < matrix.length; row += 1) {
    const pivot = matrix[row] as Float64Array;
    const diagonal = pivot[0] as number;
    for (let beside = 1; beside <= BAND && row + beside < matrix.length; beside += 1) {
      const ratio = (pivot[beside] as number) / diagonal;
      const target = matrix[row + beside] as Float64Array;
      for (let column = beside; column <= BAND; column += 1) {
        target[column - beside] = (target[column - beside] as number) - ratio * (pivot[column] as number);
      }
    }
    for (let beside = 1; beside <= BAND; beside += 1) pivot[beside] = (pivot[beside] as number) / diagonal;
  }
}

/** Solves for one right-hand side, in place, with a matrix that `factor` has been through. */
export function solve(factored: Banded, side: Float64Array): void {
  const size = side.length;
  for (let row = 0; row < size; row += 1) {
    const entries = factored[row] as Float64Array;
    for (let beside = 1; beside <= BAND && row + beside < size; beside += 1) {
      side[row + beside] =
        (side[row + beside] as number) - (entries[beside] as number) * (side[row] as number);
    }
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    const entries = factored[row] as Float64Array;
    let value = (side[row] as number) / (entries[0] as number);
    for (let beside = 1; beside <= BAND && row + beside < size; beside += 1) {
      value -= (entries[beside] as number) * (side[row + beside] as number);
    }
    side[row] = value;
  }
}
