import type { InParts } from "../core/parts";

/** How a calculation is cut into slices. */
export interface Slicing {
  /** Longest stretch without a pause, but for the part that is under way [ms] */
  readonly milliseconds: number;
  readonly now: () => number;
  /** Lets the host do what waits. */
  readonly pause: () => Promise<void>;
  /** True where nobody waits for the result any more. */
  readonly isCanceled: () => boolean;
}

/** Goes on until the slice is over; the result where it came to its end within it. */
function slice<T>(parts: InParts<T>, { milliseconds, now }: Slicing): { readonly result: T } | undefined {
  const end = now() + milliseconds;
  do {
    const { done, value } = parts.next();
    if (done) return { result: value };
  } while (now() < end);
  return undefined;
}

/**
 * Runs a calculation in slices: what ends within the first slice is given at once, anything longer as a promise that
 * lets the host answer between its slices.
 *
 * @returns The result, or a promise of it; of `undefined` where it was cancelled.
 */
export function inSlices<T>(parts: InParts<T>, slicing: Slicing): T | Promise<T | undefined> {
  const first = slice(parts, slicing);
  return first === undefined ? theRest(parts, slicing) : first.result;
}

async function theRest<T>(parts: InParts<T>, slicing: Slicing): Promise<T | undefined> {
  for (;;) {
    await slicing.pause();
    if (slicing.isCanceled()) return undefined;
    const found = slice(parts, slicing);
    if (found !== undefined) return found.result;
  }
}
