import { describe, expect, test } from "vitest";
import { localForm } from "../../src/formula/local-form";
import { parseFormula } from "../../src/formula/parse";
import { catalogue, functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { answerOf, ownCalls } from "../../src/taskpane/cell/values";
import { argumentText, callText } from "../../src/taskpane/insert/call-text";
import { entryOf } from "../../src/taskpane/insert/entry";

const parameter = (fn: string, at: number) => {
  const found = Object.values(functionNamed(fn)?.parameters ?? {})[at];
  if (found === undefined) throw new Error(`${fn} has no argument ${at}`);
  return found;
};

describe("an argument as the formula takes it", () => {
  const steel = parameter("TEMPERED_HRC", 0);
  const temper = parameter("TEMPERED_HRC", 1);
  const stations = parameter("STATIONS", 0);

  test.each([
    ["", ""],
    ["205", "205"],
    ["205,5", "205.5"],
    ["400 °F", '"400 °F"'],
    ["=Plan!B7", "Plan!B7"],
    // Both readings are possible: the function refuses it with both.
    ["1,200", '"1,200"'],
  ])("a temperature typed as %s", (entered, written) => {
    expect(argumentText(entered, temper)).toBe(written);
  });

  test("with a decimal comma 1,200 is 1.2", () => {
    expect(argumentText("1,200", temper, { decimal: "," })).toBe("1.200");
  });

  test("a steel that looks like a number or a cell stays a word", () => {
    // Two materials of EN 10027-2 as numbers would be one figure; A2 and D2 are cells too.
    for (const name of ["1.2842", "1.4110", "A2", "D2", "1095"])
      expect(argumentText(name, steel)).toBe(`"${name}"`);
  });

  test("cells of the formula's own sheet need not name it", () => {
    expect(argumentText("='Run plan'!$B$7", temper, { sheet: "Run plan" })).toBe("$B$7");
    expect(argumentText("='Run plan'!B7", temper, { sheet: "Costs" })).toBe("'Run plan'!B7");
  });

  test("a list one a line, or as copied out of a sheet", () => {
    expect(argumentText("0\n400\n800", stations)).toBe("{0;400;800}");
    expect(argumentText("0; 400; 800", stations)).toBe("{0;400;800}");
    expect(argumentText("0\t400\t800", stations)).toBe("{0,400,800}");
  });
});

test("every worked case, typed into the fields, gives the answer of the call itself", () => {
  let tried = 0;
  for (const fn of catalogue) {
    const [example] = examplesOf(fn);
    if (example === undefined) continue;
    const parameters = Object.values(fn.parameters);
    const given = parameters.map((one, at) =>
      argumentText(entryOf(example.given[at], one.takes === "cell"), one),
    );
    const expression = parseFormula(callText(fn, given));
    const [call] = expression === null ? [] : ownCalls(expression);
    if (call === undefined) throw new Error(`${fn.name}: ${callText(fn, given)} cannot be read`);
    const typed = answerOf(call.fn, call.given, new Map());
    const asked = evaluate(fn, [...example.given]);
    expect(JSON.stringify(typed), callText(fn, given)).toBe(JSON.stringify(asked));
    tried += 1;
  }
  expect(tried).toBeGreaterThan(90);
});

describe("a formula in the reader's own way", () => {
  const GERMAN = { decimal: ",", list: ";" };

  test.each([
    ['=BLADE.MASS(210,48.5,2.4,"flat")', '=BLADE.MASS(210;48,5;2,4;"flat")'],
    // A text keeps its comma and its point.
    ['=BLADE.CARBON("C 0.95, Mn 0.4")', '=BLADE.CARBON("C 0.95, Mn 0.4")'],
    ["=SUM(A1:A3,1.5)", "=SUM(A1:A3;1,5)"],
    ["=BLADE.STATIONS({0;800},{50.5;20})", "=BLADE.STATIONS({0;800};{50,5;20})"],
    // Which sign parts columns there is told by nobody: the formula stays in English.
    ["=BLADE.STATIONS({0,800},50)", "=BLADE.STATIONS({0,800},50)"],
  ])("%s", (formula, shown) => {
    expect(localForm(formula, GERMAN)).toBe(shown);
    expect(localForm(formula, { decimal: ".", list: "," })).toBe(formula);
  });
});
