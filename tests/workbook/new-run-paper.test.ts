import { expect, test } from "vitest";
import { paperOf } from "../../src/workbench/files/new-runs";

// Unicode CLDR, supplemental data, paperSize: US-Letter in the United States and Canada, A4 in Germany; from memory.
test.each([
  [["en-US", "en"], "letter"],
  [["fr-CA"], "letter"],
  [["de", "de-DE", "en-US"], "A4"],
  [["en-GB"], "A4"],
  [["en"], "A4"],
  [[], "A4"],
] as const)("a new run for %j is printed on %s", (languages, paper) => {
  expect(paperOf(languages)).toBe(paper);
});
