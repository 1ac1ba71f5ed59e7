import { expect, test } from "vitest";
import { mutatedFiles } from "./mutated-files";

// A share of what `npm run fuzz -- --files=1500` opens.
test("a workbook of damaged structure opens or is refused with a sentence, never a fault", async () => {
  const { opened, refused, faults } = await mutatedFiles(60, 20261129);
  expect(faults).toEqual([]);
  expect(opened).toBeGreaterThan(5);
  expect(refused).toBeGreaterThan(5);
}, 120_000);
