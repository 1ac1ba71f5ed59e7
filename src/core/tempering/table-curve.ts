import type { HardnessCurve } from "./curve";

export type Knot = readonly [parameter: number, hrc: number];

/** Slope at an inner knot: the weighted harmonic mean, 0 at a turn or on a plateau (Fritsch and Butland 1984). */
function innerSlope(h0: number, h1: number, d0: number, d1: number): number {
  if (d0 * d1 <= 0) return 0;
  return (3 * (h0 + h1)) / ((2 * h1 + h0) / d0 + (h1 + 2 * h0) / d1);
}

function slopes(knots: readonly Knot[]): number[] {
  const h: number[] = [];
  const d: number[] = [];
  knots.slice(1).forEach(([x, y], i) => {
    const [x0, y0] = knots[i] as Knot;
    h.push(x - x0);
    d.push((y - y0) / (x - x0));
  });
  const last = d.length - 1;
  return knots.map((_, i) => {
    if (i === 0) return d[0] as number;
    if (i === knots.length - 1) return d[last] as number;
    return innerSlope(h[i - 1] as number, h[i] as number, d[i - 1] as number, d[i] as number);
  });
}

/**
 * Smooth curve through the rows of a published table. Between two rows it stays between their
 * values, so that no peak or dip is invented.
 *
 * @param knots - Parameter and HRC, parameters rising, two or more.
 */
export function tableCurve(knots: readonly Knot[]): HardnessCurve {
  const x = knots.map(([parameter]) => parameter);
  const y = knots.map(([, hrc]) => hrc);
  const m = slopes(knots);
  const last = knots.length - 1;
  return {
    from: x[0] as number,
    to: x[last] as number,
    breaks: x.slice(1, last),
    hrcAt(parameter) {
      let i = 0;
      while (i < last - 1 && parameter > (x[i + 1] as number)) i++;
      const [x0, y0, y1] = [x[i] as number, y[i] as number, y[i + 1] as number];
      const h = (x[i + 1] as number) - x0;
      const t = (parameter - x0) / h;
      const u = 1 - t;
      const rise = t * t * (3 - 2 * t);
      return y0 + (y1 - y0) * rise + h * t * u * ((m[i] as number) * u - (m[i + 1] as number) * t);
    },
  };
}
