import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";

/** Middle of an odd number of figures. */
export function median(figures: readonly number[]): number {
  return [...figures].sort((a, b) => a - b)[Math.floor(figures.length / 2)] ?? Number.NaN;
}

/** Milliseconds that an action takes. */
export function timed(action: () => unknown): number {
  const start = performance.now();
  action();
  return performance.now() - start;
}

export interface Comparison {
  readonly ours: number;
  readonly clone: number;
}

/**
 * One column call beside `structuredClone` of its arguments and results, by turns in one run, so that whatever
 * else the machine does falls on both. Medians in milliseconds; the first passes warm up and do not count.
 */
export function besideClone(fn: WorksheetFunction, args: readonly unknown[], passes = 9): Comparison {
  const ours: number[] = [];
  const clone: number[] = [];
  for (let pass = 0; pass < passes + 2; pass += 1) {
    let result: unknown;
    const own = timed(() => {
      result = evaluate(fn, args);
    });
    const copy = timed(() => structuredClone([args, result]));
    if (pass < 2) continue;
    ours.push(own);
    clone.push(copy);
  }
  return { ours: median(ours), clone: median(clone) };
}

/** Median milliseconds of one warm call. */
export function warm(fn: WorksheetFunction, args: readonly unknown[], passes = 9): number {
  const times = Array.from({ length: passes + 2 }, () => timed(() => evaluate(fn, args)));
  return median(times.slice(2));
}
