/** A straight scale from figures to pixels. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly pixels: (figure: number) => number;
  /** Round figures on it, about as many as asked for. */
  readonly marks: (count: number) => readonly number[];
}

const ROUND = [1, 2, 5, 10];
/** Keeps a mark that lies on an end from being lost to rounding, as a share of a step. */
const CLOSE = 1e-9;

/** The smallest round step that gives at most about `count` marks. */
function roundStep(span: number, count: number): number {
  const least = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(least));
  return power * (ROUND.find((step) => step * power >= least * (1 - CLOSE)) ?? 10);
}

function marksBetween(from: number, to: number, count: number): number[] {
  const step = roundStep(to - from, count);
  const first = Math.ceil(from / step - CLOSE);
  const last = Math.floor(to / step + CLOSE);
  return Array.from({ length: last - first + 1 }, (_, at) => Number(((first + at) * step).toPrecision(12)));
}

/** An axis from one figure at one pixel to another at another. */
export function axis([from, to]: readonly [number, number], [start, end]: readonly [number, number]): Axis {
  const pixelsAFigure = (end - start) / (to - from);
  return {
    from,
    to,
    pixels: (figure) => start + (figure - from) * pixelsAFigure,
    marks: (count) => marksBetween(from, to, count),
  };
}

/** The same ends moved outward to round figures. */
export function rounded([from, to]: readonly [number, number], count: number): [number, number] {
  const step = roundStep(to - from, count);
  return [Math.floor(from / step + CLOSE) * step, Math.ceil(to / step - CLOSE) * step];
}
