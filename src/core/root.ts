/** Narrow enough a double cannot be told from its neighbour. */
const STEPS = 100;

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Share of the way across the bracket at which to look next: inverse quadratic through the last three points
 * where that is safe, else half way (Chandrupatla 1997, Advances in Engineering Software 28, 145-149).
 */
function nextShare(a: Point, b: Point, c: Point): number {
  const xi = (a.x - b.x) / (c.x - b.x);
  const phi = (a.y - b.y) / (c.y - b.y);
  if (phi ** 2 >= xi || (1 - phi) ** 2 >= 1 - xi) return 0.5;
  const toB = (a.y / (b.y - a.y)) * (c.y / (b.y - c.y));
  const toC = ((c.x - a.x) / (b.x - a.x)) * (a.y / (c.y - a.y)) * (b.y / (c.y - b.y));
  return toB + toC;
}

/**
 * Where a function that is below 0 at one end and not below 0 at the other crosses over. It need not be smooth
 * nor continuous: at a jump the bracket is halved.
 *
 * @param excess - The function.
 * @param below - End at which it is below 0; given back where it is not.
 * @param above - End at which it is 0 or more.
 * @param width - Width of the bracket that is close enough.
 * @param close - A value this near 0 is close enough; 0 where only the width counts.
 * @returns A place where the function is 0 or more, no further than `width` from the crossing, or one where it
 *   is within `close` of 0.
 */
export function crossing(
  excess: (x: number) => number,
  below: number,
  above: number,
  width: number,
  close = 0,
): number {
  let a: Point = { x: below, y: excess(below) };
  let b: Point = { x: above, y: excess(above) };
  if (a.y >= 0) return a.x;
  let share = 0.5;
  for (let step = 0; step < STEPS && Math.abs(b.x - a.x) > width; step += 1) {
    const x = a.x + share * (b.x - a.x);
    const middle: Point = { x, y: excess(x) };
    if (Math.abs(middle.y) < close) return x;
    const isSameSide = middle.y >= 0 === a.y >= 0;
    const c = isSameSide ? a : b;
    if (!isSameSide) b = a;
    a = middle;
    const least = Math.min(0.5, width / 2 / Math.abs(b.x - a.x));
    share = Math.min(1 - least, Math.max(least, nextShare(a, b, c)));
  }
  return a.y >= 0 ? a.x : b.x;
}
