/** Solves a small linear system by Gaussian elimination with row exchange. */
function solve(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  const m = matrix.map((row, i) => [...row, right[i] as number]);
  for (let column = 0; column < n; column++) {
    const rows = m.slice(column).map((row) => Math.abs(row[column] as number));
    const pivot = column + rows.indexOf(Math.max(...rows));
    [m[column], m[pivot]] = [m[pivot] as number[], m[column] as number[]];
    for (let row = 0; row < n; row++) if (row !== column) eliminate(m, row, column);
  }
  return m.map((row, i) => (row[n] as number) / (row[i] as number));
}

function eliminate(m: number[][], row: number, column: number): void {
  const source = m[column] as number[];
  const target = m[row] as number[];
  const factor = (target[column] as number) / (source[column] as number);
  source.forEach((value, i) => {
    target[i] = (target[i] as number) - factor * value;
  });
}

/** One equation of a fit: what each coefficient is multiplied with, and what should come out. */
export interface WeightedEquation {
  readonly terms: readonly number[];
  readonly y: number;
  readonly weight: number;
}

/** Coefficients that miss the equations least, weighted. */
export function leastSquares(equations: readonly WeightedEquation[]): number[] {
  const size = equations[0]?.terms.length ?? 0;
  const matrix = Array.from({ length: size }, () => Array<number>(size).fill(0));
  const right = Array<number>(size).fill(0);
  for (const { terms, y, weight } of equations) {
    for (let i = 0; i < size; i++) {
      const weighted = weight * (terms[i] as number);
      right[i] = (right[i] as number) + weighted * y;
      const row = matrix[i] as number[];
      for (let j = 0; j < size; j++) row[j] = (row[j] as number) + weighted * (terms[j] as number);
    }
  }
  return solve(matrix, right);
}

/** One point of a fit. */
export interface WeightedPoint {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

/** Weighted least-squares polynomial, coefficients from the constant upwards. */
export function fitPolynomial(points: readonly WeightedPoint[], order: number): number[] {
  return leastSquares(
    points.map(({ x, y, weight }) => ({
      terms: Array.from({ length: order + 1 }, (_, power) => x ** power),
      y,
      weight,
    })),
  );
}
