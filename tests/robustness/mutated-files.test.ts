import { expect, test } from "vitest";
import { openMutated } from "./mutated-files";

// A share of what `npm run fuzz -- --files=1500` opens.
test("a workbook of damaged structure opens or is refused with a sentence, never a fault", async () => {
  const outcomes = [];
  for (let file = 0; file < 60; file += 1) outcomes.push(await openMutated(20261129 + file));
  expect(outcomes.filter((outcome) => outcome.startsWith("fault"))).toEqual([]);
  expect(outcomes.filter((outcome) => outcome === "opened").length).toBeGreaterThan(5);
  expect(outcomes.filter((outcome) => outcome === "refused").length).toBeGreaterThan(5);
}, 120_000);
