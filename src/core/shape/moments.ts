import { gaussRule, type QuadratureRule } from "./gauss";

/** Integrals of an area over a length: the area itself, times x, times x². */
export interface Moments {
  readonly volume: number;
  readonly first: number;
  readonly second: number;
}

const SMOOTH = gaussRule(12);
const TOLERANCE = 1e-12;
const DEEPEST = 14;

function addMoments(a: Moments, b: Moments): Moments {
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

/** A sum of moments that grows part by part. */
export class MomentSum implements Moments {
  volume = 0;
  first = 0;
  second = 0;

  /** Adds moments about a point that lies `by` before the start of their length. */
  add({ volume, first, second }: Moments, by: number): void {
    this.volume += volume;
    this.first += by * volume + first;
    this.second += by * by * volume + 2 * by * first + second;
  }
}

/**
 * Moments of an area that is a polynomial of degree 2 at most: exact, from both ends and the middle.
 *
 * @param start - Area at the start [mm²]
 * @param middle - Area half way [mm²]
 * @param end - Area at the end [mm²]
 * @param length - [mm]
 */
export function polynomialMoments(start: number, middle: number, end: number, length: number): Moments {
  return {
    volume: (length * (start + 4 * middle + end)) / 6,
    first: (length * length * (2 * middle + end)) / 6,
    second: (length * length * length * (12 * middle + 9 * end - start)) / 60,
  };
}

function agree(whole: Moments, halves: Moments): boolean {
  const close = (a: number, b: number) => Math.abs(a - b) <= TOLERANCE * Math.abs(b);
  return (
    close(whole.volume, halves.volume) &&
    close(whole.first, halves.first) &&
    close(whole.second, halves.second)
  );
}

function halved(area: (x: number) => number, from: number, length: number, depth: number): Moments {
  const half = length / 2;
  const whole = byRule(SMOOTH, area, from, length);
  const halves = addMoments(byRule(SMOOTH, area, from, half), byRule(SMOOTH, area, from + half, half));
  if (depth >= DEEPEST || agree(whole, halves)) return halves;
  return addMoments(halved(area, from, half, depth + 1), halved(area, from + half, half, depth + 1));
}

/**
 * Moments of a smooth area (arcs): 12 points, halved until halving changes nothing beyond 1e-12 of the
 * figure. `area` is never negative, so that the parts cannot cancel.
 *
 * @param area - Area at a distance from the start [mm²]
 * @param length - [mm]
 */
export function smoothMoments(area: (x: number) => number, length: number): Moments {
  return halved(area, 0, length, 0);
}
