import { describe, expect, test } from "vitest";
import { RELATIONS, tried } from "./relations/all";

// Relations between answers that need no source: an answer never falls, stays the same, comes back or adds up where the
// question changes in a known way. `npm run fuzz -- --relations=1000` asks each of them as often.

const RUNS = 6;
const SEED = 20261129;

test("are as many as stand in the table, each once, of four kinds", () => {
  expect(new Set(RELATIONS.map(({ says }) => says)).size).toBe(RELATIONS.length);
  expect(RELATIONS.length).toBeGreaterThanOrEqual(109);
  expect(new Set(RELATIONS.map(({ kind }) => kind)).size).toBe(4);
});

describe.each(RELATIONS)("$kind: $says", (relation) => {
  test("holds", () => {
    const { asked, contradictions } = tried(relation, RUNS, SEED);
    expect(contradictions).toEqual([]);
    // A relation whose questions are all refused would hold for ever.
    expect(asked).toBeGreaterThan(0);
  });
});
