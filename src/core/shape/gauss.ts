/** Points on 0 to 1 with their weights. */
export interface QuadratureRule {
  readonly points: readonly number[];
  readonly weights: readonly number[];
}

const NEWTON_STEPS = 100;

/** Legendre polynomial of degree n and its derivative. */
function legendre(n: number, x: number): [value: number, slope: number] {
  let before = 1;
  let value = x;
  for (let k = 2; k <= n; k += 1) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return [value, (n * (x * value - before)) / (x * x - 1)];
}

/**
 * Gauss-Legendre rule on 0 to 1: exact for polynomials up to degree 2n - 1.
 *
 * @param n - Number of points, from 2.
 */
export function gaussRule(n: number): QuadratureRule {
  const points: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < n; i += 1) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    for (let step = 0; step < NEWTON_STEPS; step += 1) {
      const [value, slope] = legendre(n, x);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-16) break;
    }
    const [, slope] = legendre(n, x);
    points.push((1 - x) / 2);
    weights.push(1 / ((1 - x * x) * slope * slope));
  }
  return { points, weights };
}
