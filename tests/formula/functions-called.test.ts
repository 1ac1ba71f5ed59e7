import { describe, expect, test } from "vitest";
import { evaluateFormulas } from "../../src/engine/evaluate-formulas";
import { calledNames, callsOurs, wholeCallOfOurs } from "../../src/formula/functions-called";
import { unknownNameSentence } from "../../src/formula/unknown-names";

const KNOWN = new Set(["SUM", "FIND", "BLADE.CARBON", "BLADE.CUT_PLAN"]);

describe("a function that is not known", () => {
  test("is named, not the sheet or the text that looks like one", async () => {
    expect(unknownNameSentence("='Run (old)'!A1+FOOO(1)", KNOWN)).toMatch(/^no function is called FOOO\b/);
    expect(unknownNameSentence('=SUM("BAAR(2)",Lines[Hours (all)])+FOOO(1)', KNOWN)).toMatch(/called FOOO\b/);
    const [answer] = await evaluateFormulas(["='Run (old)'!A1+FOOO(1)"]);
    expect(JSON.stringify(answer?.rows)).toContain("no function is called FOOO");
    expect(JSON.stringify(answer?.rows)).not.toContain("called RUN");
  });

  test("comes with the names near it, ours alone behind our namespace", () => {
    expect(unknownNameSentence("=FINDD(1)", KNOWN)).toBe("no function is called FINDD; near: FIND");
    expect(unknownNameSentence("=BLADE.CARBO(1)", KNOWN)).toBe(
      "no function is called BLADE.CARBO; near: BLADE.CARBON",
    );
  });
});

test("functions called are found in the formula alone", () => {
  expect(calledNames("=Sum(A1, BLADE.Carbon (A2))&\"IF(1)\"&'MAX(1)'!A1&Lines[Min (h)]")).toEqual([
    "SUM",
    "BLADE.CARBON",
  ]);
});

test.each([
  ["BLADE.CARBON(A1)", true],
  ["_xldudf_BLADE_CARBON(A1)", true],
  ["[2]!_xldudf_BLADE_CARBON(A1)", true],
  ["'C:\\add-ins\\[blade.xlam]x'!blade.carbon(A1)", true],
  ['"BLADE.CARBON(A1)"', false],
  ["'BLADE.CARBON(1)'!A1", false],
  ["OTHER.BLADE.CARBON(1)", false],
  ["BLADE.CARBON", false],
])("%s calls one of ours: %s", (formula, expected) => {
  expect(callsOurs(formula)).toBe(expected);
});

test.each([
  ["=BLADE.CUT_PLAN(A1,(B1))", "CUT_PLAN"],
  [" [2]!_xldudf_BLADE_CUT_PLAN(A1) ", "CUT_PLAN"],
  ["BLADE.CARBON(A1)+BLADE.CARBON(A2)", undefined],
  ["(BLADE.CARBON(A1))", undefined],
  ["SUM(BLADE.CARBON(A1))", undefined],
  ["BLADE.CARBON(A1", undefined],
])("%s as a whole is one call of ours: %s", (formula, expected) => {
  expect(wholeCallOfOurs(formula)).toBe(expected);
});
