import { expect, test } from "vitest";
import { firstMatch, matching } from "../../src/workbench/grid/word-list";

const words = ["1095", "5160", "80CrV2", "O1", "O2", "52100", "EN 1.2510 (O1)"];

test.each([
  ["", words],
  ["5", ["5160", "52100", "1095", "EN 1.2510 (O1)"]],
  ["o1", ["O1", "EN 1.2510 (O1)"]],
  ["nothing such", []],
])("%j leaves what begins with it first, then what holds it", (typed, shown) => {
  expect(matching(words, typed)).toEqual(shown);
});

test.each([
  ["", undefined],
  ["51", "5160"],
  ["o1", "O1"],
  ["80crv2", "80CrV2"],
  ["5160", "5160"],
  // Held inside another word only: a word outside the list may be typed, and is not replaced.
  ["2510", undefined],
])("Enter on %j takes %j", (typed, taken) => {
  expect(firstMatch(words, typed)).toBe(taken);
});

// The groups and other names are those of the list of uses itself.
test("a word for a group of uses leaves those of the group", () => {
  const uses = ["Hatchet bit", "Chef knife thin hard", "Machete light", "Fillet flexible"];
  expect(matching(uses, "kitch")).toEqual(["Chef knife thin hard", "Fillet flexible"]);
});
