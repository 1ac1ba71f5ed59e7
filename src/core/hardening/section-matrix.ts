/**
 * Symmetric banded equations. `bands[row * (reach + 1) + d]` holds the coefficient of `row` with
 * `row - d`. Both arguments are overwritten; `right` becomes the solution.
 */
export function solveBanded(bands: Float64Array, right: Float64Array, reach: number): void {
  const rows = right.length;
  const width = reach + 1;
  for (let row = 0; row < rows; row += 1) eliminate(bands, right, row, reach);
  for (let row = rows - 1; row >= 0; row -= 1) {
    const value = right[row] as number;
    const from = Math.min(row, reach);
    const base = row * width;
    for (let d = 1; d <= from; d += 1) {
      right[row - d] = (right[row - d] as number) - (bands[base + d] as number) * value;
    }
  }
}

/** A row of L D Lᵀ in place: the diagonal as 1/D, the bands below as L, the right side carried along. */
function eliminate(bands: Float64Array, right: Float64Array, row: number, reach: number): void {
  const width = reach + 1;
  const base = row * width;
  const from = Math.min(row, reach);
  let diagonal = bands[base] as number;
  let value = right[row] as number;
  // Until the row is done its bands stand multiplied with the diagonals of the rows before.
  for (let d = from; d >= 1; d -= 1) {
    const above = base - d * width;
    let entry = bands[base + d] as number;
    for (let e = d + 1; e <= from; e += 1) {
      entry -= (bands[base + e] as number) * (bands[above + e - d] as number);
    }
    bands[base + d] = entry;
  }
  for (let d = from; d >= 1; d -= 1) {
    const entry = bands[base + d] as number;
    const factor = entry * (bands[base - d * width] as number);
    bands[base + d] = factor;
    diagonal -= factor * entry;
    // The right side of the rows before is already divided by their diagonals.
    value -= entry * (right[row - d] as number);
  }
  bands[base] = 1 / diagonal;
  right[row] = value / diagonal;
}
