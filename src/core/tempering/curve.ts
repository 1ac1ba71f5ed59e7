/** Hardness after temper against the Hollomon-Jaffe parameter, for one steel. */
export interface HardnessCurve {
  readonly from: number;
  readonly to: number;
  /** HRC at a parameter between `from` and `to`. */
  hrcAt(parameter: number): number;
  /** Parameters inside the span between which the curve only falls or only rises. */
  readonly breaks: readonly number[];
}

/** Where a curve meets a hardness: single parameters, or both ends of a flat stretch. */
export function crossings(curve: HardnessCurve, hrc: number, from: number, to: number): number[] {
  const found: number[] = [];
  let left = from;
  for (const right of [...curve.breaks.filter((p) => p > from && p < to), to]) {
    const [a, b] = [curve.hrcAt(left) - hrc, curve.hrcAt(right) - hrc];
    const [isAtLeft, isAtRight] = [isMet(a), isMet(b)];
    if (isAtLeft) push(found, left);
    if (isAtRight) push(found, right);
    if (!isAtLeft && !isAtRight && a * b < 0) push(found, root(curve, hrc, left, right, a, b));
    left = right;
  }
  return found;
}

function push(found: number[], parameter: number): void {
  const last = found[found.length - 1];
  if (last === undefined || parameter - last > 1e-9) found.push(parameter);
}

const CLOSE_ENOUGH_HRC = 1e-9;

/** On a level stretch the last digits of a sum would decide which of its ends is found. */
const isMet = (offHrc: number): boolean => Math.abs(offHrc) < CLOSE_ENOUGH_HRC;

/** Regula falsi with the Illinois rule: never leaves the bracket, needs no slope. */
function root(curve: HardnessCurve, hrc: number, x0: number, x1: number, f0: number, f1: number): number {
  let [a, b, fa, fb] = [x0, x1, f0, f1];
  for (let step = 0; step < 100; step++) {
    const x = (a * fb - b * fa) / (fb - fa);
    const f = curve.hrcAt(x) - hrc;
    if (isMet(f)) return x;
    if (f * fb < 0) {
      a = b;
      fa = fb;
    } else {
      fa /= 2;
    }
    b = x;
    fb = f;
  }
  return b;
}

/** Highest and lowest HRC between two parameters. */
export function extremes(
  curve: HardnessCurve,
  from: number,
  to: number,
): { lowest: number; highest: number } {
  const values = [from, ...curve.breaks.filter((p) => p > from && p < to), to].map((p) => curve.hrcAt(p));
  return { lowest: Math.min(...values), highest: Math.max(...values) };
}

/** Polynomial around a centre, coefficients from the constant upwards; must fall all the way. */
export function polynomialCurve(
  coefficients: readonly number[],
  centre: number,
  from: number,
  to: number,
): HardnessCurve {
  const [a = 0, b = 0, c = 0, d = 0] = coefficients;
  return {
    from,
    to,
    breaks: [],
    hrcAt(parameter) {
      const x = parameter - centre;
      return a + x * (b + x * (c + x * d));
    },
  };
}

/** `first` below `joint`, lifted so that both meet there, and `second` from it on. */
export function joinedCurve(first: HardnessCurve, second: HardnessCurve): HardnessCurve {
  const joint = second.from;
  const lift = second.hrcAt(joint) - first.hrcAt(joint);
  return {
    from: first.from,
    to: second.to,
    breaks: [...first.breaks.filter((p) => p < joint), joint, ...second.breaks],
    hrcAt: (parameter) => (parameter < joint ? first.hrcAt(parameter) + lift : second.hrcAt(parameter)),
  };
}

/** `share` of the way from one curve to another, over the span both have. */
export function blendedCurve(one: HardnessCurve, other: HardnessCurve, share: number): HardnessCurve {
  const breaks = [...one.breaks, ...other.breaks].sort((a, b) => a - b);
  return {
    from: Math.max(one.from, other.from),
    to: Math.min(one.to, other.to),
    breaks,
    hrcAt: (parameter) => (1 - share) * one.hrcAt(parameter) + share * other.hrcAt(parameter),
  };
}
