import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import { fuzzFunction } from "./fuzz-function";

/** A share of what `npm run fuzz` does: enough to see a new fault, short enough for every run. */
const CALLS = 400;
const LIMIT_MS = 400;
const SEED = Number(process.env.FAST_CHECK_SEED ?? 20261125);

describe("arguments of every kind: no exception, no figure that is none, no word of the machine", () => {
  test.each(catalogue.map((fn) => [fn.name, fn] as const))("%s", (_name, fn) => {
    const { fault, calls } = fuzzFunction(fn, { calls: CALLS, limit: LIMIT_MS, seed: SEED });
    expect(fault).toBe("");
    expect(calls).toBeGreaterThan(0);
  });
});
