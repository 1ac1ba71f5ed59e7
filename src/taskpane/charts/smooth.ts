type Pixel = readonly [x: number, y: number];

const shown = (...figures: readonly number[]) => figures.map((figure) => figure.toFixed(2)).join(",");

/** Slopes of the straight lines from each point to the next. */
function chords(points: readonly Pixel[]): number[] {
  return points.slice(1).map(([x, y], at) => {
    const [lastX, lastY] = points[at] ?? [x, y];
    return x === lastX ? 0 : (y - lastY) / (x - lastX);
  });
}

/**
 * Slopes of a smooth curve at its points. Where the data turn, or stay level, the curve is level, and elsewhere no
 * slope is over three times that of a neighbouring chord: between two points the curve then never leaves the span of
 * the two, so that a smooth line shows no figure that was not worked out (Fritsch and Carlson, SIAM Journal on
 * Numerical Analysis 17, 1980, from memory).
 */
function slopes(points: readonly Pixel[]): number[] {
  const between = chords(points);
  return points.map((_, at) => {
    const [before, after] = [between[at - 1], between[at]];
    if (before === undefined || after === undefined) return before ?? after ?? 0;
    if (before * after <= 0) return 0;
    const limit = 3 * Math.min(Math.abs(before), Math.abs(after));
    return Math.sign(before) * Math.min(Math.abs((before + after) / 2), limit);
  });
}

/** The curve from the second of some points on, to be joined to a path that ends in the first. */
function onwards(points: readonly Pixel[]): string {
  const slope = slopes(points);
  const pieces = points.slice(1).map(([x, y], at) => {
    const [fromX, fromY] = points[at] ?? [x, y];
    const third = (x - fromX) / 3;
    const leaving = shown(fromX + third, fromY + third * (slope[at] ?? 0));
    const arriving = shown(x - third, y - third * (slope[at + 1] ?? 0));
    return `C${leaving} ${arriving} ${shown(x, y)}`;
  });
  return pieces.join("");
}

/** A smooth line through points of rising or falling x, as the `d` of a path. */
export function smoothPath(points: readonly Pixel[]): string {
  const [first] = points;
  return first === undefined ? "" : `M${shown(...first)}${onwards(points)}`;
}

/** The area between two smooth lines over the same x. */
export function smoothArea(upper: readonly Pixel[], lower: readonly Pixel[]): string {
  const back = [...lower].reverse();
  const [turn] = back;
  return turn === undefined ? "" : `${smoothPath(upper)}L${shown(...turn)}${onwards(back)}Z`;
}
