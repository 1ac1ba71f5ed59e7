/**
 * Symmetric banded equations. `bands[row * (reach + 1) + d]` holds the coefficient of `row` with
 * `row - d`. Both arguments are overwritten; `right` becomes the solution.
 */
export function solveBanded(bands: Float64Array, right: Float64Array, reach: number): void {
  factorise(bands, right.length, reach);
  const width = reach + 1;
  for (let row = 0; row < right.length; row += 1) {
    let sum = right[row] as number;
    const from = Math.min(row, reach);
    for (let d = 1; d <= from; d += 1) sum -= (bands[row * width + d] as number) * (right[row - d] as number);
    right[row] = sum;
  }
  for (let row = 0; row < right.length; row += 1)
    right[row] = (right[row] as number) / (bands[row * width] as number);
  for (let row = right.length - 1; row > 0; row -= 1) {
    const value = right[row] as number;
    const from = Math.min(row, reach);
    for (let d = 1; d <= from; d += 1) {
      right[row - d] = (right[row - d] as number) - (bands[row * width + d] as number) * value;
    }
  }
}

/** L D Lᵀ in place: the diagonal becomes D, the bands below become L. */
function factorise(bands: Float64Array, rows: number, reach: number): void {
  const width = reach + 1;
  for (let row = 0; row < rows; row += 1) {
    const from = Math.min(row, reach);
    let diagonal = bands[row * width] as number;
    for (let d = from; d >= 1; d -= 1) {
      const column = row - d;
      let value = bands[row * width + d] as number;
      for (let e = d + 1; e <= from; e += 1) {
        value -= (bands[row * width + e] as number) * (bands[column * width + (e - d)] as number);
      }
      bands[row * width + d] = value;
      const factor = value / (bands[column * width] as number);
      diagonal -= factor * value;
    }
    for (let d = from; d >= 1; d -= 1) {
      bands[row * width + d] = (bands[row * width + d] as number) / (bands[(row - d) * width] as number);
    }
    bands[row * width] = diagonal;
  }
}
