import { describe, expect, test } from "vitest";
import { findUse } from "../../src/core/blade/bands";
import { findQuench } from "../../src/core/hardening/quench-media";
import { Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import { functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";

function says(name: string, ...given: unknown[]): string {
  const fn = functionNamed(name);
  if (fn === undefined) throw new RangeError(name);
  const refusal = evaluate(fn, given)
    .flat()
    .find((cell) => cell instanceof Refusal);
  return refusal instanceof Refusal ? refusal.message : "";
}

describe("arguments in each other's place are noticed", () => {
  test.each([
    [
      ["TEMPERED_HRC", 205, "1095"],
      '"1095" stands where temper C belongs: the order is TEMPERED_HRC(steel, temper C)',
    ],
    [
      ["TEMPER_FOR", 60, "1095"],
      '"1095" stands where target HRC belongs: the order is TEMPER_FOR(steel, target HRC)',
    ],
    [
      ["MAX_SECTION", "fast oil", "1095"],
      '"1095" stands where quench belongs: the order is MAX_SECTION(steel, quench)',
    ],
    [
      ["ASSESS", "1095", "European sword sharp", 52],
      '"1095" stands where use belongs: the order is ASSESS(use, steel)',
    ],
  ])("%j", ([name = "", ...given], sentence) => {
    expect(says(String(name), ...given)).toBe(sentence);
  });

  test("a figure that is none and a steel in its place stay as they are", () => {
    expect(says("TEMPERED_HRC", "1095", "hot")).toMatch(/^temper C: "hot" is not a temperature/);
    expect(says("TEMPERED_HRC", 205, 205)).toMatch(/"205" is not in the grade table/);
  });
});

describe("steels as people write them", () => {
  // EN 10027-2 numbers are written 1.2842; 1.2842 is 90MnCrV8.
  test.each([
    ["1095 steel", "1095"],
    ["O1 Steel", "O1"],
    ["12842", "90MnCrV8"],
    [12842, "90MnCrV8"],
    ["52100", "52100"],
  ])("%s is %s", (given, name) => {
    expect(findSteel(given).name).toBe(name);
  });

  test("a zero for the letter O is asked about", () => {
    expect(() => findSteel("01")).toThrow('"01" begins with a zero: write "O1" with the letter O');
  });

  test("figures before their symbols are an analysis", () => {
    const said = findSteel("0.95% C 0.4% Mn");
    expect([said.composition.C, said.composition.Mn]).toEqual([0.95, 0.4]);
    expect(said.composition).toEqual(findSteel("C 0.95 Mn 0.4").composition);
  });
});

test("a target may be a span: its middle is meant", () => {
  const fn = functionNamed("TEMPER_FOR");
  if (fn === undefined) throw new RangeError("TEMPER_FOR");
  expect(evaluate(fn, ["1095", "60-62"])).toEqual(evaluate(fn, ["1095", 61]));
  expect(evaluate(fn, ["1095", "60 HRC"])).toEqual(evaluate(fn, ["1095", 60]));
});

test("a quench nobody knows is answered with oils, a misspelt one with the nearest", () => {
  expect(() => findQuench("custard")).toThrow('Nearest: "fast oil", "medium oil", "slow oil", "oil A"');
  expect(() => findQuench("canola")).toThrow('Nearest: "fast oil"');
  expect(() => findQuench("brime")).toThrow('Nearest: "brine"');
});

// Common practice, no source.
test.each([
  ["santoku", "Chef knife thin hard"],
  ["sujihiki", "Chef knife thin hard"],
  ["slicer", "Chef knife thin hard"],
  ["deba", "Chef knife thin hard"],
  ["petty", "Paring or petty"],
  ["skinner", "Hunting or skinning"],
  ["seax", "Field camp bushcraft"],
  ["bowie", "Large camp chopper"],
  ["kukri", "Heavy chopper golok kukri"],
  ["billhook", "Billhook brush hook"],
  ["drawknife", "Drawknife or spokeshave"],
  ["arming sword", "European sword sharp"],
  ["longsword", "European sword sharp"],
  ["falchion", "European sword sharp"],
  ["messer", "European sword sharp"],
  ["gladius", "European sword sharp"],
  ["katana", "Differential edge Japanese style"],
  ["tanto", "Differential edge Japanese style"],
])("%s is a %s", (word, use) => {
  expect(findUse(word).word).toBe(use);
});
