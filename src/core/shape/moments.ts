import { gaussRule, type QuadratureRule } from "./gauss";

/** Integrals of an area over a length: the area itself, times x, times x². */
export interface Moments {
  readonly volume: number;
  readonly first: number;
  readonly second: number;
}

/** Exact to degree 5: area of degree 2 times x². */
const POLYNOMIAL = gaussRule(3);
const SMOOTH = gaussRule(12);
const TOLERANCE = 1e-12;
const DEEPEST = 14;

export function addMoments(a: Moments, b: Moments): Moments {
  return { volume: a.volume + b.volume, first: a.first + b.first, second: a.second + b.second };
}

function byRule(
  { points, weights }: QuadratureRule,
  area: (x: number) => number,
  from: number,
  length: number,
): Moments {
  let volume = 0;
  let first = 0;
  let second = 0;
  for (let index = 0; index < points.length; index += 1) {
    const x = from + (points[index] as number) * length;
    const part = (weights[index] as number) * length * area(x);
    volume += part;
    first += part * x;
    second += part * x * x;
  }
  return { volume, first, second };
}

/** Moments of an area that is a polynomial of degree 2 at most: exact. */
export function polynomialMoments(area: (x: number) => number, from: number, length: number): Moments {
  return byRule(POLYNOMIAL, area, from, length);
}

function agree(whole: Moments, halves: Moments): boolean {
  const close = (a: number, b: number) => Math.abs(a - b) <= TOLERANCE * Math.abs(b);
  return (
    close(whole.volume, halves.volume) &&
    close(whole.first, halves.first) &&
    close(whole.second, halves.second)
  );
}

/**
 * Moments of a smooth area (arcs): 12 points, halved until halving changes nothing beyond 1e-12 of the
 * figure. `area` is never negative, so that the parts cannot cancel.
 */
export function smoothMoments(area: (x: number) => number, from: number, length: number, depth = 0): Moments {
  const half = length / 2;
  const whole = byRule(SMOOTH, area, from, length);
  const halves = addMoments(byRule(SMOOTH, area, from, half), byRule(SMOOTH, area, from + half, half));
  if (depth >= DEEPEST || agree(whole, halves)) return halves;
  return addMoments(
    smoothMoments(area, from, half, depth + 1),
    smoothMoments(area, from + half, half, depth + 1),
  );
}
