/**
 * Symmetric banded equations. `bands[row * (reach + 1) + d]` holds the coefficient of `row` with
 * `row - d`. Both arguments are overwritten; `right` becomes the solution.
 */
export function solveBanded(bands: Float64Array, right: Float64Array, reach: number): void {
  if (reach === 3) {
    eliminateThree(bands, right);
    substituteThree(bands, right);
    return;
  }
  for (let row = 0; row < right.length; row += 1) eliminate(bands, right, row, reach);
  for (let row = right.length - 1; row >= 0; row -= 1) substitute(bands, right, row, reach);
}

function substitute(bands: Float64Array, right: Float64Array, row: number, reach: number): void {
  const value = right[row] as number;
  const base = row * (reach + 1);
  for (let d = 1; d <= Math.min(row, reach); d += 1) {
    right[row - d] = (right[row - d] as number) - (bands[base + d] as number) * value;
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

/** The same for three bands, those of a section: what the rows before came to is carried along, which takes a third. */
function eliminateThree(bands: Float64Array, right: Float64Array): void {
  // Of one, two and three rows before: 1/D, the right side; of one and two: L to the row before it, and the one above.
  let inverse1 = 0;
  let inverse2 = 0;
  let inverse3 = 0;
  let value1 = 0;
  let value2 = 0;
  let value3 = 0;
  let near1 = 0;
  let near2 = 0;
  let far1 = 0;
  for (let row = 0, base = 0; row < right.length; row += 1, base += 4) {
    const third = bands[base + 3] as number;
    const second = (bands[base + 2] as number) - third * near2;
    const first = (bands[base + 1] as number) - second * near1 - third * far1;
    const l3 = third * inverse3;
    const l2 = second * inverse2;
    const l1 = first * inverse1;
    const inverse = 1 / ((bands[base] as number) - l3 * third - l2 * second - l1 * first);
    const value = ((right[row] as number) - third * value3 - second * value2 - first * value1) * inverse;
    bands[base + 3] = l3;
    bands[base + 2] = l2;
    bands[base + 1] = l1;
    right[row] = value;
    inverse3 = inverse2;
    inverse2 = inverse1;
    inverse1 = inverse;
    value3 = value2;
    value2 = value1;
    value1 = value;
    near2 = near1;
    near1 = l1;
    far1 = l2;
  }
}

function substituteThree(bands: Float64Array, right: Float64Array): void {
  const last = right.length - 1;
  // What the rows below take from the next ones above them.
  let next = 0;
  let second = 0;
  let third = 0;
  for (let row = last, base = 4 * last; row >= 0; row -= 1, base -= 4) {
    const value = (right[row] as number) - next;
    right[row] = value;
    next = second + (bands[base + 1] as number) * value;
    second = third + (bands[base + 2] as number) * value;
    third = (bands[base + 3] as number) * value;
  }
}
