const STEPS = 100;
const SECANT_STEPS = 16;

/**
 * A root of a smooth function near two guesses, by the secant method: a few steps where the guesses are good.
 *
 * @param within - Distance from zero at which the search ends.
 * @returns The root; `undefined` where the steps run away, so that the caller may bracket it instead.
 */
export function rootNear(
  f: (x: number) => number,
  [first, second]: readonly [number, number],
  within: number,
): number | undefined {
  let [a, b] = [first, second];
  let [atA, atB] = [f(a), f(b)];
  for (let step = 0; step < SECANT_STEPS && Number.isFinite(b); step += 1) {
    if (Math.abs(atB) <= within) return b;
    const x = b - (atB * (b - a)) / (atB - atA);
    [a, atA] = [b, atB];
    [b, atB] = [x, f(x)];
  }
  return undefined;
}

/**
 * A root of a function between two places where it has opposite signs, by the Illinois form of false
 * position: the bracket is kept, and an end that stays is given half its weight so that both close in.
 *
 * @param f - Continuous between the ends.
 * @param tolerance - Width of the bracket, or distance from zero in `within`, at which the search ends.
 * @returns The root.
 */
export function rootBetween(
  f: (x: number) => number,
  low: number,
  high: number,
  { tolerance, within = 0 }: { readonly tolerance: number; readonly within?: number },
): number {
  let [a, b] = [low, high];
  let [atA, atB] = [f(a), f(b)];
  let x = b;
  for (let step = 0; step < STEPS && Math.abs(b - a) > tolerance; step += 1) {
    x = (a * atB - b * atA) / (atB - atA);
    const atX = f(x);
    if (Math.abs(atX) <= within) return x;
    if (atX * atB < 0) [a, atA] = [b, atB];
    else atA /= 2;
    [b, atB] = [x, atX];
  }
  return x;
}
