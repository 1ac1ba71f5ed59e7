/** Below this central angle the closed form loses digits and the series is used. */
const SMALL_ANGLE = 1;
/** Under this share of its chord an arc is a parabola to the last digit, and its angle squared may underflow. */
const FLAT = 1e-8;

/** x - sin x without the loss of digits that the subtraction suffers for small x. */
function angleLessSine(x: number): number {
  if (x > SMALL_ANGLE) return x - Math.sin(x);
  let term = (x * x * x) / 6;
  let sum = term;
  for (let n = 4; Math.abs(term) > 1e-18 * sum; n += 2) {
    term *= -(x * x) / (n * (n + 1));
    sum += term;
  }
  return sum;
}

/**
 * Area between a chord and its arc, up to a half circle.
 *
 * @param chord - Length of the chord [mm]
 * @param height - Height of the arc above the middle of the chord, at most half the chord [mm]
 * @returns Area, to about 1e-14 of itself for any height [mm²]
 */
export function segmentArea(chord: number, height: number): number {
  if (height <= 0 || chord <= 0) return 0;
  if (height < FLAT * chord) return (2 / 3) * chord * height;
  const angle = 4 * Math.atan((2 * height) / chord);
  const halfSine = Math.sin(angle / 2);
  return ((chord * chord) / (8 * halfSine * halfSine)) * angleLessSine(angle);
}

/** Radius of the arc over a chord [mm]. */
export function segmentRadius(chord: number, height: number): number {
  return ((chord * chord) / 4 + height * height) / (2 * height);
}

/** Height of an arc of the given radius over a chord of at most twice that radius [mm]. */
export function segmentHeight(radius: number, chord: number): number {
  const quarter = (chord * chord) / 4;
  return quarter / (radius + Math.sqrt(Math.max(0, radius * radius - quarter)));
}
