import { expect, test } from "vitest";
import { readSaved } from "../../src/workbench/saved-file";

const program = "Blade Metallurgy workbench";

test.each([
  ["no JSON", "PK\u0003\u0004"],
  [
    "another program",
    JSON.stringify({ program: "other", workbook: { sheets: { a: {} }, sheetOrder: ["a"] } }),
  ],
  ["no sheets", JSON.stringify({ program, workbook: { sheets: {}, sheetOrder: [] } })],
  ["a sheet that is not there", JSON.stringify({ program, workbook: { sheets: {}, sheetOrder: ["a"] } })],
  ["a list", "[]"],
  ["nothing", "null"],
])("a file with %s is refused with a sentence", (_, text) => {
  expect(() => readSaved(text)).toThrow("This is not a file of the Blade Metallurgy workbench.");
});
