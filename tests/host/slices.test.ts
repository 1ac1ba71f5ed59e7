import { describe, expect, test } from "vitest";
import type { InParts } from "../../src/core/parts";
import { catalogue } from "../../src/functions/catalogue";
import { evaluate, evaluateInParts } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { RING } from "../../src/functions/mechanics";
import { inSlices, type Slicing } from "../../src/functions/parts";
import { BEST_OFFER } from "../../src/functions/stock";
import { triplets } from "../stock/drawn-orders";

const ROWS = 1000;
/** A scalar is answered in at most so many rows a part, a row function in one. */
const ROWS_A_PART = { scalar: 32, row: 1 } as const;

/** Work that takes so many milliseconds a part, on a clock of its own. */
function work(parts: number, milliseconds: number) {
  let clock = 0;
  let pauses = 0;
  let isCanceled = false;
  const stretches: number[] = [];
  let since = 0;
  function* run(): InParts<string> {
    for (let part = 0; part < parts; part += 1) {
      clock += milliseconds;
      yield;
    }
    return "done";
  }
  const slicing: Slicing = {
    milliseconds: 50,
    now: () => clock,
    pause: async () => {
      pauses += 1;
      stretches.push(clock - since);
      since = clock;
    },
    isCanceled: () => isCanceled,
  };
  return { run, slicing, stretches, pauses: () => pauses, cancel: () => (isCanceled = true) };
}

describe("slices", () => {
  test("short work is answered at once, without a promise", () => {
    const { run, slicing, pauses } = work(10, 4);
    expect(inSlices(run(), slicing)).toBe("done");
    expect(pauses()).toBe(0);
  });

  test.each([
    [1000, 4],
    [40, 17],
    [30, 120],
  ])("%i parts of %i ms never run longer than a slice and one part", async (parts, milliseconds) => {
    const { run, slicing, stretches } = work(parts, milliseconds);
    expect(await inSlices(run(), slicing)).toBe("done");
    expect(Math.max(...stretches)).toBeLessThan(50 + milliseconds);
    expect(stretches.length).toBeGreaterThan((parts * milliseconds) / (50 + milliseconds) - 2);
  });

  test("canceled work stops at the next pause", async () => {
    const { run, slicing, cancel, pauses } = work(1000, 10);
    const result = inSlices(run(), slicing);
    cancel();
    expect(await result).toBeUndefined();
    expect(pauses()).toBe(1);
  });

  test("what throws in a later slice fails the promise", async () => {
    const { slicing } = work(1, 1);
    function* failing(): InParts<string> {
      yield;
      throw new Error("late");
    }
    await expect(async () => inSlices(failing(), { ...slicing, milliseconds: 0 })).rejects.toThrow("late");
  });
});

/** Arguments of a worked case with each single value repeated down a column. */
function columns(fn: (typeof catalogue)[number]): unknown[] {
  const given = examplesOf(fn)[0]?.given ?? [];
  const parameters = Object.values(fn.parameters);
  return given.map((value, at) => {
    if (value === null || typeof value === "object") return value;
    return parameters[at]?.takes === "cell" ? Array.from({ length: ROWS }, () => [value]) : [[value]];
  });
}

describe("every function that takes a column", () => {
  const wide = catalogue.filter(
    (fn) =>
      fn.shape !== "table" && columns(fn).some((given) => Array.isArray(given) && given.length === ROWS),
  );
  // What a part costs in time is a line of the bench (`npm run bench -- tasks`): here the parts are counted.
  const LIGHT = wide.filter(({ takesLong }) => !takesLong);

  test.each(LIGHT.map((fn) => [fn.name, fn] as const))(
    "%s offers a pause every few rows of 1,000",
    (_, fn) => {
      const parts = evaluateInParts(fn, columns(fn));
      let pauses = 0;
      while (!parts.next().done) pauses += 1;
      const each = fn.shape === "row" ? ROWS_A_PART.row : ROWS_A_PART.scalar;
      expect(pauses).toBeGreaterThanOrEqual(Math.floor(ROWS / each));
    },
  );

  test("in parts the answer is the same", () => {
    const given = [[[0], [400], [800]], 40, 5, "lenticular"];
    const parts = evaluateInParts(RING, given);
    let step = parts.next();
    while (!step.done) step = parts.next();
    expect(step.value).toEqual(evaluate(RING, given));
  });
});

/** Work of a table function, and the fewest pauses it must offer: what a pause costs in time is a line of the bench. */
const RUN = [
  ["line", "use", "steel", "good", "yield", "length", "width", "thickness"],
  ...Array.from({ length: 200 }, (_, row) => [`L${row}`, "Field camp bushcraft", "1095", 6, 0.9, 240, 38, 4]),
];
// Bars that can be filled to the last step: no simple rule finds that, and the search begins.
const LENGTHS = triplets(120, 120).map((length) => [length]);
const ONES = LENGTHS.map(() => [1]);
const OFFERED = examplesOf(BEST_OFFER)[0]?.given ?? [];
const HEAVY: readonly (readonly [name: string, given: readonly unknown[], pauses: number])[] = [
  ["CUT_PLAN", [LENGTHS, ONES, 1000, 0, 0], 100],
  ["STEEL_ORDER", ["1084", 50, 3, LENGTHS, ONES, 1000, null, 0, 0], 100],
  ["BEST_OFFER", OFFERED, 8],
  ["OFFERS_COMPARED", OFFERED.slice(0, 2), 6],
  ["RUN_PLAN", [RUN], 400],
  ["RUN_TOTALS", [RUN], 400],
  ["STEELS_FOR", ["European sword sharp", 6, "fast oil", 800], 100],
  ["LOADS", ["oil", 5000, 0.2, 1], 9],
  ["PRICE_BREAKS", [Array.from({ length: 200 }, () => [10_000]), 350, 12, 0.8, "unit", 45, 60], 200],
];

describe("what is heavy in one call", () => {
  const named = (name: string) => catalogue.find((fn) => fn.name === name) as (typeof catalogue)[number];

  test.each(HEAVY)("%s pauses, and in parts the answer is the same", (name, given, least) => {
    const parts = evaluateInParts(named(name), given);
    let pauses = 0;
    let step = parts.next();
    for (; !step.done; step = parts.next()) pauses += 1;
    expect(pauses).toBeGreaterThanOrEqual(least);
    expect(step.value).toEqual(evaluate(named(name), given));
    expect(step.value.flat().some((cell) => typeof cell === "number")).toBe(true);
  });

  test("every table function that may be called off is among them, and stops where it is", async () => {
    const tables = catalogue.filter(({ shape, takesLong }) => shape === "table" && takesLong);
    // Answers on offers are remembered: another kerf makes another question.
    const known = new Map<string, readonly unknown[]>(HEAVY.map(([name, given]) => [name, given]));
    known.set("BEST_OFFER", [...OFFERED, 1.3]);
    known.set("OFFERS_COMPARED", [...OFFERED.slice(0, 2), 1.3]);
    for (const fn of tables) {
      const { slicing, cancel } = work(1, 1);
      const given = known.get(fn.name);
      expect(given, fn.name).toBeDefined();
      const result = inSlices(evaluateInParts(fn, given ?? []), { ...slicing, milliseconds: 0 });
      expect(result, fn.name).toBeInstanceOf(Promise);
      cancel();
      expect(await result, fn.name).toBeUndefined();
    }
    expect(tables.length).toBeGreaterThanOrEqual(7);
  });
});
