import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { fitFileText } from "../fitting/fit";

test("the fitted curves are those that the printed rows give today: else npm run generate", () => {
  expect(readFileSync("src/core/tempering/fits.json", "utf8")).toBe(fitFileText());
});
