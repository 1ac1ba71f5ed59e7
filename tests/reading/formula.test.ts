import { describe, expect, test } from "vitest";
import { parseFormula } from "../../src/formula/parse";
import { cellsOf, ownCalls, referencesIn } from "../../src/taskpane/cell/values";

describe("our calls in a formula", () => {
  test("the text of each part is what stands in the formula", () => {
    const [outer, inner] = ownCalls(
      parseFormula('=ROUND( BLADE.CARBON( "1095" ) + BLADE.CARBON(A2) ,1)') ?? never(),
    );
    expect(outer?.text).toBe('BLADE.CARBON( "1095" )');
    expect(inner?.text).toBe("BLADE.CARBON(A2)");
    expect([outer?.isWhole, inner?.isWhole]).toEqual([false, false]);
  });

  test("references are found once each", () => {
    expect(referencesIn(parseFormula("=BLADE.CARBON(A2)+SUM(A2,Plan!B1:B3,Kerf)") ?? never())).toEqual([
      "A2",
      "Plan!B1:B3",
      "Kerf",
    ]);
  });
});

describe("what a part comes to", () => {
  const known = new Map([
    ["A1", [[400]]],
    ["B1:B2", [[1], ["2"]]],
    ["C1", [[null]]],
    ["D1", [[{ type: "Error" as const, basicValue: "#N/A" }]]],
    ["E1", null],
  ]);
  const value = (formula: string) => cellsOf(parseFormula(formula) ?? never(), known);

  test.each([
    ['=A1&" F"', [["400 F"]]],
    ["=B1:B2*2", [[2], [4]]],
    ["=-A1/4", [[-100]]],
    ["=C1+1", [[1]]],
    ["=50%", [[0.5]]],
  ])("%s", (formula, expected) => {
    expect(value(formula)).toEqual(expected);
  });

  test("an error in a cell stays one, with a sentence", () => {
    expect(value("=D1+1")?.[0]?.[0]).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("mend that cell"),
    });
    expect(value("=1/C1")?.[0]?.[0]).toMatchObject({ code: "#VALUE!" });
    expect(value('=A1+"hot"')?.[0]?.[0]).toMatchObject({ code: "#VALUE!" });
  });

  test("what only the sheet knows is not guessed", () => {
    for (const formula of ["=XLOOKUP(A1,B1:B2,B1:B2)", "=E1", "=E1*2", "=Z9", "=A1>3", "=BLADE.CARBON(E1)"])
      expect(value(formula), formula).toBeNull();
  });

  // SAE numbering: the last two digits are hundredths of a per cent of carbon.
  test("our own functions are worked out", () => {
    expect(value('=BLADE.CARBON("1095")*100')?.[0]?.[0]).toBeCloseTo(95, 9);
    expect(value("=BLADE.CARBON(A1)")?.[0]?.[0]).toMatchObject({ code: "#N/A" });
  });
});

function never(): never {
  throw new Error("the formula was not read");
}
